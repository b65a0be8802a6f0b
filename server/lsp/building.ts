/**
 * Call hierarchy over the protocol: who is called is what a thing is built from, who calls is what moves with it. An
 * entry is looked up again in the present text; one that stands there no more has no steps.
 */
import {
  CallHierarchyIncomingCallsRequest,
  CallHierarchyOutgoingCallsRequest,
  CallHierarchyPrepareRequest,
  type CallHierarchyIncomingCall,
  type CallHierarchyItem,
  type CallHierarchyOutgoingCall,
  type TextDocumentPositionParams,
} from 'vscode-languageserver';
import { builtAt, builtFrom, moves, type Built, type Step } from '../features/hierarchy';
import { location, symbolKinds } from './convert';
import type { Desk } from './desk';
import { aboutText, offsetOf, service, type Room, type Service } from './service';
import { canonical } from './uris';

function entryOf({ uri, from, to, ...one }: Built, desk: Desk): CallHierarchyItem {
  const whole = location({ uri, from, to }, desk);
  const { range } = location({ uri, from: one.nameFrom, to: one.nameTo }, desk);
  const { name, detail, kind } = one;
  return { name, detail, kind: symbolKinds[kind], uri: whole.uri, range: whole.range, selectionRange: range };
}

const prepared = aboutText((document, params: TextDocumentPositionParams, desk): CallHierarchyItem[] => {
  const { key } = document;
  const found = builtAt(desk.names(key), offsetOf(document, params), desk.tied(key));
  return found === undefined ? [] : [entryOf(found, desk)];
});

type Asked = { readonly item: CallHierarchyItem };

/** The definition that an entry was made of, as the texts stand now. */
function present({ item: { uri, selectionRange, name } }: Asked, desk: Desk): Built | undefined {
  const key = canonical(uri);
  const lines = desk.lines(key);
  if (lines === undefined) return undefined;
  const found = builtAt(desk.names(key), lines.offset(selectionRange.start), desk.tied(key));
  return found?.name === name ? found : undefined;
}

const rangesIn = (uri: string, { places }: Step, desk: Desk) =>
  places.map(({ from, to }) => location({ uri, from, to }, desk).range);

function outgoing(asked: Asked, { desk }: Room): CallHierarchyOutgoingCall[] | null {
  const found = present(asked, desk);
  if (found === undefined) return null;
  return builtFrom(desk.names(found.uri), found, desk.tied(found.uri)).map((step) => ({
    to: entryOf(step.other, desk),
    fromRanges: rangesIn(found.uri, step, desk),
  }));
}

function incoming(asked: Asked, { desk }: Room): CallHierarchyIncomingCall[] | null {
  const found = present(asked, desk);
  if (found === undefined) return null;
  return moves(found, desk.tied(found.uri)).map((step) => ({
    from: entryOf(step.other, desk),
    fromRanges: rangesIn(step.other.uri, step, desk),
  }));
}

export const buildingServices: readonly Service[] = [
  service(CallHierarchyPrepareRequest.method, 'names', { callHierarchyProvider: true }, prepared),
  service(CallHierarchyIncomingCallsRequest.method, 'names', {}, incoming),
  service(CallHierarchyOutgoingCallsRequest.method, 'names', {}, outgoing),
];
