/** Other places that a problem speaks of, for clients that show them beside it, and within its words for those that don't. */
import type { Diagnostic } from 'vscode-languageserver';
import { say } from '../../grammar/say';
import type { PlacedFinding } from '../drafting/model';
import { location } from './convert';
import type { Desk } from './desk';

type Told = Pick<Diagnostic, 'message' | 'relatedInformation'>;

/** The words of a problem with its other places beside them. */
export function besideIt({ message, related }: PlacedFinding, desk: Desk): Told {
  const relatedInformation = related.map((other) => ({
    location: location(other.place, desk),
    message: other.message,
  }));
  return { message, relatedInformation };
}

/** The words of a problem and a line for each of its other places; the file is named where it is another. */
export function withinIt({ message, place, related }: PlacedFinding, desk: Desk): Told {
  const lines = related.map((other) => {
    const { uri, range } = location(other.place, desk);
    const line = range.start.line + 1;
    if (other.place.uri === place.uri) return say`Line ${line}: ${other.message}`;
    return say`${fileOf(uri)}, line ${line}: ${other.message}`;
  });
  return { message: [message, ...lines].join('\n') };
}

/** The name of a file as a person reads it. */
function fileOf(uri: string): string {
  const name = uri.slice(uri.lastIndexOf('/') + 1);
  try {
    return decodeURIComponent(name);
  } catch {
    return name; // a percent sign that encodes nothing stands for itself
  }
}
