/** What the previews ask of the server: sheets, what a hand may move, what a ruler tells, and the ways to the text. */
import type { Location, WorkspaceEdit } from 'vscode-languageserver';
import {
  methods,
  type Grip,
  type Measured,
  type Pin,
  type ToldProblem,
  type Trial,
} from '../../client/preview/protocol';
import type { PlacedFinding } from '../drafting/model';
import { gripOf, pulled } from '../features/grip';
import type { Position } from '../features/lines';
import { layables } from '../features/laying';
import { measured } from '../features/measure';
import { writeTrial } from '../features/trial';
import { location, workspaceEdit } from './convert';
import type { Opening, Seat } from './previews';
import { service, type Room, type Service } from './service';

interface Tried {
  readonly uri: string;
  readonly trial: Trial;
}

function trialWritten({ uri, trial }: Tried, { desk }: Room): WorkspaceEdit | null {
  const pattern = desk.pattern(uri);
  const source = desk.workshop.source(pattern.uri);
  return source === undefined ? null : workspaceEdit(writeTrial(pattern, source, trial), desk);
}

interface Taken {
  readonly uri: string;
  readonly source: string;
}

function gripAt({ uri, source, piece }: Taken & { readonly piece: string }, { desk }: Room): Grip {
  return gripOf(desk.pattern(uri), source, piece, (file) => desk.workshop.source(file));
}

function pulledTo(
  { uri, source, amounts }: Taken & { readonly amounts: readonly number[] },
  { desk }: Room,
): WorkspaceEdit | null {
  const fix = pulled(desk.pattern(uri), source, amounts, (file) => desk.workshop.source(file));
  return fix === undefined ? null : workspaceEdit(fix, desk);
}

interface Laid extends Seat {
  readonly from: Pin;
  readonly to: Pin;
}

const measuredBetween = ({ from, to, ...seat }: Laid, { previews }: Room): Measured =>
  measured(previews.shown(seat), from, to);

interface Sought extends Seat {
  readonly source: string;
  readonly problem?: ToldProblem;
}

/** A problem where it is underlined by now; one that is mended meanwhile, where the thing stands that it was said of. */
function located({ source, problem, ...seat }: Sought, { desk, previews }: Room): Location | null {
  const told = problem && desk.problems(previews.shown(seat)).find((one) => isTold(one, source, problem));
  const place = told?.place ?? desk.pattern(seat.uri).locate(source);
  return place === undefined ? null : location(place, desk);
}

const isTold = (one: PlacedFinding, source: string, { code, message }: ToldProblem): boolean =>
  one.source === source && one.code === code && one.message === message;

function sourcesAt(
  { uri, position }: { uri: string; position: Position },
  { desk }: Room,
): readonly string[] {
  const document = desk.documents.get(uri);
  if (document === undefined) return [];
  return desk.pattern(uri).sourcesAt(document.key, document.lines.offset(position));
}

export const previewServices: readonly Service[] = [
  service(methods.openPreview, 'checks', {}, (opening: Opening, { previews }) => previews.open(opening)),
  service(methods.writeTrial, 'names', {}, trialWritten),
  service(methods.grip, 'geometry', {}, gripAt),
  service(methods.pull, 'names', {}, pulledTo),
  service(methods.locate, 'names', {}, located),
  service(methods.sourcesAt, 'names', {}, sourcesAt),
  service(methods.measure, 'geometry', {}, measuredBetween),
  service(methods.layable, 'geometry', {}, (seat: Seat, { previews }) => layables(previews.shown(seat))),
];
