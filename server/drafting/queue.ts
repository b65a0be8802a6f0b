/** Numbers of groups in waiting: what is to be evaluated, the earliest in the order first. */

/** A binary heap, each number held once. */
export class Queue {
  private readonly heap: number[] = [];
  private readonly held = new Set<number>();

  add(index: number): void {
    if (this.held.has(index)) return;
    this.held.add(index);
    const { heap } = this;
    heap.push(index);
    let i = heap.length - 1;
    while (i > 0) {
      const parent = (i - 1) >> 1;
      if (heap[parent]! <= heap[i]!) return;
      [heap[parent], heap[i]] = [heap[i]!, heap[parent]!];
      i = parent;
    }
  }

  next(): number | undefined {
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
      const child = 2 * i + 2 < heap.length && heap[2 * i + 2]! < heap[2 * i + 1]! ? 2 * i + 2 : 2 * i + 1;
      if (child >= heap.length || heap[i]! <= heap[child]!) return;
      [heap[i], heap[child]] = [heap[child]!, heap[i]!];
      i = child;
    }
  }
}
