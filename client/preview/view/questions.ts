/** What the view asks of the server: one question of a kind at a time, and of those that wait the newest. */
import type { FromView, Question } from '../protocol';

interface Waiting {
  readonly params: object;
  readonly then: (answer: never) => void;
}

export class Questions {
  private count = 0;
  private readonly asked = new Map<number, Waiting & { readonly about: Question }>();
  private readonly waiting = new Map<Question, Waiting>();

  constructor(private readonly post: (message: FromView) => void) {}

  /** @param then told the answer, unless a newer question was asked meanwhile */
  ask<Answer>(about: Question, params: object, then: (answer: Answer) => void): void {
    const waiting: Waiting = { params, then };
    if ([...this.asked.values()].some((one) => one.about === about)) this.waiting.set(about, waiting);
    else this.send(about, waiting);
  }

  answered(id: number, answer: unknown): void {
    const asked = this.asked.get(id);
    if (asked === undefined) return;
    this.asked.delete(id);
    const next = this.waiting.get(asked.about);
    this.waiting.delete(asked.about);
    if (next !== undefined) this.send(asked.about, next);
    else if (answer !== null) asked.then(answer as never);
  }

  private send(about: Question, waiting: Waiting): void {
    const id = ++this.count;
    this.asked.set(id, { about, ...waiting });
    this.post({ type: 'question', id, about, params: waiting.params });
  }
}
