/** The editor's setting for severities, as the manifest describes it: one entry a code that can be set. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { format } from 'prettier';
import { catalogue, isFirm, severityOf, SETTINGS } from '../../server/checks/index';
import { root } from './sources';

interface Manifest {
  readonly contributes: { configuration?: { title: string; properties: Record<string, unknown> } };
}

const path = join(root, 'package.json');

/** What the manifest has to say of the setting. */
export function severitySetting(): unknown {
  const codes = catalogue.map(({ code }) => code).filter((code) => !isFirm(code));
  const about = new Map(catalogue.map(({ code, title }) => [code, title]));
  return {
    type: 'object',
    default: {},
    additionalProperties: false,
    markdownDescription:
      'How grave each problem is, by its code: `off`, `note`, `warning` or `error`. Errors that keep something from being ' +
      'read or drawn stay errors.',
    properties: Object.fromEntries(
      codes.map((code) => [
        code,
        { enum: [...SETTINGS], description: `${about.get(code)} (usually: ${severityOf(code)})` },
      ]),
    ),
  };
}

/** The setting as the manifest has it. */
export function settingInManifest(): unknown {
  const manifest = JSON.parse(readFileSync(path, 'utf8')) as Manifest;
  return manifest.contributes.configuration?.properties['draftwright.severity'];
}

/** Writes the setting into the manifest, beside whatever else can be set. */
export async function writeSetting(): Promise<void> {
  const manifest = JSON.parse(readFileSync(path, 'utf8')) as Manifest;
  const { configuration } = manifest.contributes;
  manifest.contributes.configuration = {
    title: 'Draftwright',
    properties: { ...configuration?.properties, 'draftwright.severity': severitySetting() },
  };
  writeFileSync(path, await format(JSON.stringify(manifest), { parser: 'json-stringify' }));
}
