/** What is known of one definition, for whoever points at its name. */
import type { Source } from './finding';
import type { Shape, Value } from './model';

export interface DefinitionInfo {
  readonly source: Source;
  readonly name: string;
  readonly kind:
    | 'value'
    | 'choice'
    | 'point'
    | 'line'
    | 'curve'
    | 'piece'
    | 'edge'
    | 'mark'
    | 'balance line'
    | 'hole'
    | 'seam'
    | 'finish'
    | 'notch'
    | 'dart'
    | 'pleats'
    | 'gathers'
    | 'draft'
    | 'measurement'
    | 'body'
    | 'sizes';
  readonly doc: string;
  readonly value?: Value;
  readonly shape?: Shape;
}
