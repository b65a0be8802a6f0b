/** Which definitions differ between the wearer's two sides, and have to be computed once for each. */
import type { Network } from './names/network';
import type { Body } from './values/body';

function reached(from: Iterable<string>, next: (id: string) => Iterable<string>): ReadonlySet<string> {
  const seen = new Set(from);
  for (const id of seen) for (const one of next(id)) seen.add(one);
  return seen;
}

/** What is sided, for the measurements with two sides, while nobody takes something else than before. */
interface Kept {
  readonly revision: number;
  readonly measurements: string;
  body: Body | undefined;
  readonly sided: ReadonlySet<string>;
  both?: ReadonlySet<string>;
}

const kept = new WeakMap<Network, Kept>();

function sidesOf(network: Network, body: Body | undefined): Kept {
  const { revision } = network;
  const before = kept.get(network);
  if (before?.revision === revision && before.body === body) return before;
  const names = [...(body?.measures ?? [])].flatMap(([name, { sided }]) => (sided ? [name] : []));
  const measurements = names.join(' ');
  if (before?.revision === revision && before.measurements === measurements)
    return Object.assign(before, { body });
  const made = { revision, measurements, body, sided: restingOn(network, names) };
  kept.set(network, made);
  return made;
}

/** Definitions that rest on a measurement with two sides, named without saying which. */
export const sidedDefinitions = (network: Network, body: Body | undefined): ReadonlySet<string> =>
  sidesOf(network, body).sided;

/** Of the sided definitions, those that make pieces drafted `each side`, and what is made and sewn of these. */
export function bothSides(network: Network, body: Body | undefined): ReadonlySet<string> {
  const sides = sidesOf(network, body);
  sides.both ??= eachSide(network, sides.sided);
  return sides.both;
}

function restingOn(network: Network, measurements: readonly string[]): ReadonlySet<string> {
  const named: string[] = [];
  for (const name of measurements) {
    for (const id of network.dependents.get(`measurement:${name}`) ?? []) {
      if (network.nodes.get(id)?.links.bare.has(name)) named.push(id);
    }
  }
  return reached(named, (id) => network.dependents.get(id) ?? []);
}

function eachSide(network: Network, sided: ReadonlySet<string>): ReadonlySet<string> {
  if (sided.size === 0) return sided;
  const pieces = [...sided].filter((id) => {
    const node = network.nodes.get(id)?.declaration.statement.node;
    return node?.kind === 'piece' && node.eachSide;
  });
  if (pieces.length === 0) return new Set();
  const before = reached(pieces, (id) => network.nodes.get(id)?.links.inputs ?? []);
  const after = reached(pieces, (id) => network.dependents.get(id) ?? []);
  return new Set([...sided].filter((id) => before.has(id) || after.has(id)));
}
