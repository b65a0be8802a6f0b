/** What the names of a joined piece's second half become: where the first has one of that name, the piece goes before it. */
import type { EdgePart, Gathers, Piece, Pleats } from '../../model';
import { everyEdge } from '../../shapes/parts';

/** Things of one kind share a name space: edges with those of holes; darts with pleats and gathers; marks with lines. */
export type NameKind = 'edge' | 'shaping' | 'corner' | 'mark' | 'hole';

export interface SecondNames {
  of(kind: NameKind, name: string): string;
}

/** @param running names of edges that run on from one piece to the other, and stay one edge */
export function secondNames(first: Piece, second: Piece, running: ReadonlySet<string>): SecondNames {
  const [taken, own] = [namesIn(first), namesIn(second)];
  const given = new Map<string, string>();
  return {
    of(kind, name) {
      if (!taken[kind].has(name) || (kind === 'edge' && running.has(name))) return name;
      const key = `${kind} ${name}`;
      let found = given.get(key) ?? `${second.base}-${name}`;
      while (!given.has(key) && (taken[kind].has(found) || own[kind].has(found)))
        found = `${second.base}-${found}`;
      given.set(key, found);
      return found;
    },
  };
}

function namesIn(piece: Piece): Readonly<Record<NameKind, ReadonlySet<string>>> {
  const { shaping } = piece;
  const namesOf = (...lists: readonly (readonly { readonly name: string }[] | undefined)[]) =>
    new Set(lists.flatMap((list = []) => list.map(({ name }) => name)));
  return {
    edge: namesOf(everyEdge(piece)),
    shaping: namesOf(piece.darts, shaping?.fishDarts, shaping?.pleats, shaping?.gathers),
    corner: namesOf(piece.corners),
    mark: namesOf(piece.balance, piece.marks),
    hole: namesOf(piece.holes),
  };
}

/** A part's dart, pleat and gathers by their new names. */
export function renamedPart(part: EdgePart, names: SecondNames): EdgePart {
  const { dart, gathered } = part;
  return {
    ...part,
    ...(dart !== undefined && { dart: renamedOfRow(dart, names) }),
    ...(gathered && { gathered: { ...gathered, by: names.of('shaping', gathered.by) } }),
  };
}

/** `fan 2`, the second pleat of the row `fan`, goes with its row. */
function renamedOfRow(part: string, names: SecondNames): string {
  const [name, ...number] = part.split(' ');
  return [names.of('shaping', name!), ...number].join(' ');
}

export const renamedPleats = (row: Pleats, names: SecondNames): Pleats => ({
  ...row,
  name: names.of('shaping', row.name),
  edge: names.of('edge', row.edge),
  pleats: row.pleats.map((pleat) => ({ ...pleat, part: renamedOfRow(pleat.part, names) })),
});

export const renamedGathers = (row: Gathers, names: SecondNames): Gathers => ({
  ...row,
  name: names.of('shaping', row.name),
  edge: names.of('edge', row.edge),
});
