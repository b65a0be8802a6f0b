/** Work that takes a while: it shows how far it is on a terminal, and stops where a person asks for it. */
import { say } from '../../grammar/say';
import { Unable, type Io } from './io';

/** Says what is done now, and looks whether to go on. Throws Unable where the work is to stop. */
export type Tell = (words: string) => Promise<void>;

/** @param work writes what it makes whole or not at all, so that it may stop between any two steps */
export async function longWork<T>(io: Io, work: (tell: Tell) => Promise<T>): Promise<T> {
  const stop = io.stoppable?.();
  const tell: Tell = async (words) => {
    io.progress?.(words);
    // a key that was pressed is heard when nothing else runs
    await new Promise<void>((resolve) => void setImmediate(resolve));
    if (stop?.asked() === true)
      throw new Unable(say`Stopped. Nothing was written, and what was there stays.`);
  };
  try {
    return await work(tell);
  } finally {
    io.progress?.('');
    stop?.done();
  }
}
