/** A sweep over every size and both ends of every choice, told step by step and given up when it is no longer wanted. */
import { say } from '../../grammar/say';
import {
  ExecuteCommandRequest,
  LSPErrorCodes,
  ResponseError,
  type ExecuteCommandParams,
} from 'vscode-languageserver';
import { SWEEP, type Swept } from '../../client/preview/protocol';
import { Sweep, variantsOf, withSeverities } from '../checks';
import { problemsOf } from '../features/problems';
import { location } from './convert';
import type { Desk } from './desk';
import { breathe, service, type During, type Room, type Service } from './service';

async function swept(
  { command, arguments: args }: ExecuteCommandParams,
  { desk }: Room,
  during?: During,
): Promise<Swept | ResponseError | null> {
  const uri: unknown = args?.[0];
  const document = command === SWEEP && typeof uri === 'string' ? desk.documents.get(uri) : undefined;
  if (document === undefined) return null;
  const pattern = desk.pattern(document.key);
  const variants = variantsOf(pattern, {});
  const sweep = new Sweep(desk.findings(pattern), variants);
  during?.begin(say`Checking for every size and both ends of every choice`);
  try {
    let at = 0;
    for (const [one, variant] of desk.workshop.oneByOne(document.key, variants)) {
      sweep.note(one, variant);
      during?.report(++at / variants.length, say`${at} of ${variants.length}`);
      await breathe();
      if (during?.cancelled() === true)
        return new ResponseError(LSPErrorCodes.RequestCancelled, 'No longer wanted.');
      // what was found of an earlier text must not be told of this one
      if (desk.pattern(document.key) !== pattern) return changed();
    }
  } finally {
    during?.done();
  }
  return told(desk, document.key, sweep, variants.length);
}

const changed = () =>
  new ResponseError(
    LSPErrorCodes.ContentModified,
    say`The pattern was changed while it was being checked: ask again when it is as you want it.`,
  );

function told(desk: Desk, key: string, sweep: Sweep, variants: number): Swept {
  const pattern = desk.pattern(key);
  const found = withSeverities(sweep.findings(), desk.severities);
  const findings = problemsOf(pattern, found, desk.workshop.source(key));
  return {
    variants,
    findings: findings.map(({ code, severity, message, place }) => ({
      ...{ code, severity, message },
      ...location(place, desk),
    })),
  };
}

export const sweepingServices: readonly Service[] = [
  service(
    ExecuteCommandRequest.method,
    'checks',
    { executeCommandProvider: { commands: [SWEEP], workDoneProgress: true } },
    swept,
  ),
];
