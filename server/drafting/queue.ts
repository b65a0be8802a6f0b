/** Groups to be evaluated, the earliest in the order first: a binary heap, each held once. */
import type { Group } from './names/order';

export class Queue {
  private readonly heap: Group[] = [];
  private readonly held = new Set<Group>();

  add(group: Group): void {
    if (this.held.has(group)) return;
    this.held.add(group);
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

  next(): Group | undefined {
    const { heap } = this;
    const first = heap[0];
    if (first === undefined) return undefined;
    this.held.delete(first);
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
