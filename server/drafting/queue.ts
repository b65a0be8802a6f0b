/** Groups to be evaluated, the earliest in the order first, each held once. */
import type { Group } from './names/order';

/**
 * What is added before anything was taken is put in order at once: a pattern that is opened comes nearly in order. What
 * comes later, while groups are evaluated, goes through a binary heap.
 */
export class Queue {
  /** The last first, so that the next is at the end; undefined while nothing was taken. */
  private sorted: Group[] | undefined;
  private readonly heap: Group[] = [];
  private readonly held = new Set<Group>();

  add(group: Group): void {
    if (this.held.has(group)) return;
    this.held.add(group);
    if (this.sorted !== undefined) this.rise(group);
  }

  next(): Group | undefined {
    this.sorted ??= [...this.held].sort((a, b) => b.rank - a.rank);
    const { sorted, heap } = this;
    const [first, other] = [sorted.at(-1), heap[0]];
    const isSorted = other === undefined || (first !== undefined && first.rank <= other.rank);
    const group = isSorted ? sorted.pop() : this.taken();
    if (group !== undefined) this.held.delete(group);
    return group;
  }

  private rise(group: Group): void {
    const { heap } = this;
    heap.push(group);
    let i = heap.length - 1;
    while (i > 0) {
      const parent = (i - 1) >> 1;
      if (heap[parent]!.rank <= heap[i]!.rank) return;
      [heap[parent], heap[i]] = [heap[i]!, heap[parent]!];
      i = parent;
    }
  }

  private taken(): Group {
    const { heap } = this;
    const first = heap[0]!;
    const last = heap.pop()!;
    if (heap.length > 0) {
      heap[0] = last;
      this.sink();
    }
    return first;
  }

  private sink(): void {
    const { heap } = this;
    let i = 0;
    for (;;) {
      const child =
        2 * i + 2 < heap.length && heap[2 * i + 2]!.rank < heap[2 * i + 1]!.rank ? 2 * i + 2 : 2 * i + 1;
      if (child >= heap.length || heap[i]!.rank <= heap[child]!.rank) return;
      [heap[i], heap[child]] = [heap[child]!, heap[i]!];
      i = child;
    }
  }
}
