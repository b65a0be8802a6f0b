/**
 * The typed syntax tree of a pattern file.
 *
 * A file is a list of top-level statements; a statement may own a block of statements. Places inside a statement
 * (`Span`) count from the statement's own first character, so that a statement whose text has not changed keeps its
 * node, object for object, wherever an edit moves it. Only `Statement.start` moves.
 */

/** Half-open stretch of characters, counted from the first character of the statement it lies in. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

export interface Node {
  readonly at: Span;
}

/** A name as written, in NFC. */
export interface Name extends Node {
  readonly text: string;
}

/** A text between quotes, without them and with `\"` resolved. */
export interface Text extends Node {
  readonly text: string;
}

export type Unit = 'cm' | 'mm' | 'm' | 'in' | 'yd' | 'deg' | '%';
export type Direction = 'up' | 'down' | 'left' | 'right';
export type Side = 'left' | 'right';

// ---------------------------------------------------------------------------------------------------- expressions

/** `12cm`, `2 1/2in`, `1/3`, `0.5`, `20deg`, `-3mm` in a table cell: the amount in its own unit. */
export interface Quantity extends Node {
  readonly kind: 'quantity';
  readonly amount: number;
  readonly unit?: Unit;
}

/** A text where a value may stand (`choose closure = "…"` is not one; kept for messages). */
export interface TextValue extends Node {
  readonly kind: 'text';
  readonly text: string;
}

/** `waist`, `skirt.back-hip`, `shoulder.left`, `front.waist`. The path has one to three names. */
export interface Ref extends Node {
  readonly kind: 'ref';
  readonly path: readonly Name[];
}

export interface Call extends Node {
  readonly kind: 'call';
  readonly func: Name;
  readonly args: readonly Expr[];
}

export interface Sum extends Node {
  readonly kind: 'sum';
  readonly op: '+' | '-';
  readonly left: Expr;
  readonly right: Expr;
}

export interface Product extends Node {
  readonly kind: 'product';
  readonly op: '*' | '/';
  readonly left: Expr;
  readonly right: Expr;
}

export interface Negative extends Node {
  readonly kind: 'negative';
  readonly of: Expr;
}

export interface Bracket extends Node {
  readonly kind: 'bracket';
  readonly inside: Expr;
}

/** `(233, 402)`: a dot of a photograph or a drawing. */
export interface Coordinates extends Node {
  readonly kind: 'coordinates';
  readonly x: Expr;
  readonly y: Expr;
}

export interface Compare extends Node {
  readonly kind: 'compare';
  readonly op: '=' | '<' | '<=' | '>' | '>=';
  readonly left: Expr;
  readonly right: Expr;
}

export interface Logic extends Node {
  readonly kind: 'logic';
  readonly op: 'and' | 'or';
  readonly left: Expr;
  readonly right: Expr;
}

export interface Not extends Node {
  readonly kind: 'not';
  readonly of: Expr;
}

/** Which of several meeting points: `nearest P`, `upper`, `lower`, `left-hand`, `right-hand`. */
export interface Pick extends Node {
  readonly word: 'nearest' | 'upper' | 'lower' | 'left-hand' | 'right-hand';
  readonly point?: Expr;
}

/** `where L meets M` */
export interface Crossing extends Node {
  readonly kind: 'crossing';
  readonly one: Expr;
  readonly other: Expr;
  readonly pick?: Pick;
}

/** `halfway`, a named point, `1/3 from A`, `7cm beyond B`; `toward` names the way to count where A is no end. */
export interface Place extends Node {
  readonly value: Expr;
  readonly counted?: 'from' | 'beyond' | 'before' | 'after' | 'below' | 'above';
  readonly point?: Expr;
  readonly toward?: Expr;
}

/** `on L PLACE` */
export interface Placed extends Node {
  readonly kind: 'placed';
  readonly on: Expr;
  readonly place: Place;
}

/** `midpoint of P and Q` */
export interface Midpoint extends Node {
  readonly kind: 'midpoint';
  readonly one: Expr;
  readonly other: Expr;
}

/** `part of C from P to Q` */
export interface Section extends Node {
  readonly kind: 'section';
  readonly of: Expr;
  readonly from: Expr;
  readonly to: Expr;
}

/** `run A then B` */
export interface Joined extends Node {
  readonly kind: 'joined';
  readonly parts: readonly Expr[];
}

/** `20deg below right`, `15deg left of down`, `slope(l)` */
export interface Bearing extends Node {
  readonly angle: Expr;
  /** `below right` is { away: 'down', along: 'right' }: `angle` away from `along`, toward `away`. `left of down` is { away: 'left', along: 'down' }. */
  readonly named?: { readonly away: Direction; readonly along: Direction };
}

export type StepForm =
  /** `down 5cm` */
  | { readonly kind: 'by'; readonly direction: Direction; readonly distance: Expr }
  /** `down to T`; `across to T` has no direction */
  | { readonly kind: 'until'; readonly direction?: Direction; readonly target: Expr; readonly pick?: Pick }
  /** `at 20deg below right for 12cm` */
  | { readonly kind: 'bearing'; readonly bearing: Bearing; readonly distance: Expr }
  /** `reach 12.5cm to L` */
  | { readonly kind: 'reach'; readonly radius: Expr; readonly target: Expr; readonly pick?: Pick }
  /** `squared onto L` */
  | { readonly kind: 'dropped'; readonly onto: Expr; readonly pick?: Pick }
  /** `squared from L 1.5cm toward R` */
  | { readonly kind: 'squared-out'; readonly line: Expr; readonly distance: Expr; readonly toward: Expr }
  | Change;

export type Change =
  /** `turned 15deg about Q`; `turned 15deg clockwise about Q` */
  | { readonly kind: 'turned'; readonly angle: Expr; readonly clockwise?: boolean; readonly about: Expr }
  | { readonly kind: 'mirrored'; readonly across: Expr }
  | {
      readonly kind: 'moved';
      readonly by: readonly { readonly direction: Direction; readonly distance: Expr }[];
    }
  | { readonly kind: 'parallel'; readonly distance: Expr; readonly toward: Expr }
  /** `laid A on P and B toward Q` */
  | {
      readonly kind: 'laid';
      readonly anchor: Expr;
      readonly on: Expr;
      readonly second: Expr;
      readonly toward: Expr;
    }
  | { readonly kind: 'reversed' };

/** One more step from an operand: `P down 5cm`, `C reversed`. Chains nest to the left. */
export interface Step extends Node {
  readonly kind: 'step';
  readonly base: Expr;
  /** The step's own words, without its base. */
  readonly stepAt: Span;
  readonly step: StepForm;
}

export type HeadingForm =
  | { readonly kind: 'direction'; readonly direction: Direction }
  | { readonly kind: 'toward'; readonly point: Expr }
  | { readonly kind: 'square'; readonly to: Expr }
  | { readonly kind: 'along'; readonly line: Expr }
  | { readonly kind: 'bearing'; readonly bearing: Bearing };

export type Heading = Node & HeadingForm;

/** A knot of a curve: `R going left` */
export interface Via extends Node {
  readonly point: Expr;
  readonly going?: Heading;
}

export type WayOption = Node &
  (
    | { readonly kind: 'through'; readonly via: readonly Via[] }
    | { readonly kind: 'leaving'; readonly heading: Heading }
    | { readonly kind: 'arriving'; readonly heading: Heading }
    | { readonly kind: 'fuller' | 'flatter'; readonly by: Expr }
    | { readonly kind: 'hollow'; readonly depth: Expr; readonly toward: Expr; readonly place?: Place }
    | { readonly kind: 'centre'; readonly point: Expr; readonly longWay: boolean }
  );

/** `P to Q through R …`: a line, curve or arc by the word that defines it. */
export interface Way extends Node {
  readonly kind: 'way';
  readonly start: Expr;
  readonly end: Expr;
  readonly options: readonly WayOption[];
}

export type Expr =
  | Quantity
  | TextValue
  | Ref
  | Call
  | Sum
  | Product
  | Negative
  | Bracket
  | Coordinates
  | Compare
  | Logic
  | Not
  | Crossing
  | Placed
  | Midpoint
  | Section
  | Joined
  | Step
  | Way;

// ---------------------------------------------------------------------------------------------------- statements

export interface Range extends Node {
  readonly low: Expr;
  readonly high: Expr;
}

/** `S`, `38`, `"Tall M"` */
export interface SizeName extends Node {
  readonly text: string;
}

export interface PatternNode extends Node {
  readonly kind: 'pattern';
  readonly title: Text;
  readonly revision?: Text;
  /** `2026-11-28`, as written. */
  readonly dated?: string;
}
export interface UseNode extends Node {
  readonly kind: 'use';
  readonly path: Text;
  readonly as?: Name;
  readonly given: readonly { readonly name: Name; readonly value: Expr }[];
}
export interface UnitsNode extends Node {
  readonly kind: 'units';
  readonly unit: 'in' | 'cm' | 'mm';
}
export interface ToleranceNode extends Node {
  readonly kind: 'tolerance';
  readonly value: Expr;
}
export interface DraftedForNode extends Node {
  readonly kind: 'drafted-for';
  readonly body: Name;
  readonly size?: SizeName;
}
export interface MeasureNode extends Node {
  readonly kind: 'measure';
  readonly name: Name;
  readonly how: Text;
  readonly range?: Range;
}
/** `usual dart-angle in 0deg .. 30deg`: by which range of its own the pattern is to be judged. */
export interface UsualNode extends Node {
  readonly kind: 'usual';
  readonly name: Name;
  readonly range: Range;
}
/** `accept unfinished-edge at front.hem because "…"`: a finding that its author looked at and lets stand. */
export interface AcceptNode extends Node {
  readonly kind: 'accept';
  readonly code: Name;
  /** What it is found of; without it, all that is found under the code. */
  readonly of?: Ref;
  readonly because: Text;
}
export interface LetNode extends Node {
  readonly kind: 'let';
  readonly name: Name;
  readonly value: Expr;
}
export interface ChooseNode extends Node {
  readonly kind: 'choose';
  readonly name: Name;
  readonly value: Expr;
  readonly range?: Range;
  readonly among?: readonly Expr[];
}
export interface SolveNode extends Node {
  readonly kind: 'solve';
  readonly name: Name;
  readonly range: Range;
  readonly left: Expr;
  readonly right: Expr;
}
export interface ExpectNode extends Node {
  readonly kind: 'expect';
  readonly condition: Expr;
  readonly within?: Expr;
}
export interface BodyNode extends Node {
  readonly kind: 'body';
  readonly name: Name;
  readonly from?: { readonly table: Name; readonly size?: SizeName };
}
export interface TakenNode extends Node {
  readonly kind: 'taken';
  readonly date: string;
}
/** A line of a body: one value, or one for each side. */
export interface MeasuredNode extends Node {
  readonly kind: 'measured';
  readonly name: Name;
  readonly value?: Quantity;
  readonly left?: Quantity;
  readonly right?: Quantity;
}
export interface SizesNode extends Node {
  readonly kind: 'sizes';
  readonly name: Name;
}
export interface SizeRowNode extends Node {
  readonly kind: 'size-row';
  readonly sizes: readonly SizeName[];
}
export interface RowNode extends Node {
  readonly kind: 'row';
  readonly name: Name;
  /** One a size; undefined where a dash stands alone for what was not measured. */
  readonly cells: readonly (Quantity | undefined)[];
}
export interface DraftNode extends Node {
  readonly kind: 'draft';
  readonly name: Name;
}
export interface DrawnAsNode extends Node {
  readonly kind: 'drawn-as';
  readonly side: Side;
}
/** `point|line|curve|arc NAME = phrase` */
export interface ShapeNode extends Node {
  readonly kind: 'shape';
  readonly form: 'point' | 'line' | 'curve' | 'arc';
  readonly name: Name;
  readonly phrase: Expr;
}
export interface CircleNode extends Node {
  readonly kind: 'circle';
  readonly name: Name;
  readonly centre: Expr;
  readonly by: 'radius' | 'round';
  readonly size: Expr;
}

export interface PieceNode extends Node {
  readonly kind: 'piece';
  readonly name: Name;
  readonly of?: Ref;
  readonly eachSide: boolean;
  readonly workedFrom?: Ref;
  readonly mirrored: boolean;
  readonly when?: Expr;
}
export interface LiningNode extends Node {
  readonly kind: 'lining';
  readonly name: Name;
  readonly of: Ref;
  readonly when?: Expr;
}
/** Its block holds the edges. */
export interface OutlineNode extends Node {
  readonly kind: 'outline';
  readonly from: Expr;
}
export interface HoleNode extends Node {
  readonly kind: 'hole';
  readonly name: Name;
  readonly from: Expr;
}
export interface EdgeNode extends Node {
  readonly kind: 'edge';
  readonly name: Name;
  readonly runs: readonly Run[];
  readonly untrued: boolean;
}
export type Run = Node &
  (
    | { readonly kind: 'along'; readonly curve: Expr; readonly to: Expr }
    | { readonly kind: 'straight'; readonly to: Expr }
    | { readonly kind: 'curve'; readonly to: Expr; readonly options: readonly WayOption[] }
    | { readonly kind: 'dart'; readonly name: Name; readonly by: Expr; readonly to: Expr }
  );

export interface CutLayer extends Node {
  /** How many; `pair` alone is 2 with `as: 'pairs'`. */
  readonly count: Expr | number;
  readonly as?: 'pairs' | 'alike' | 'open' | 'fold' | 'left' | 'right';
  readonly cloth?: Name;
}
export interface CutNode extends Node {
  readonly kind: 'cut';
  readonly layers: readonly CutLayer[];
  readonly rightSideUp: boolean;
}
export interface FoldNode extends Node {
  readonly kind: 'fold';
  readonly edge: Ref;
}
export interface GrainNode extends Node {
  readonly kind: 'grain';
  readonly along?: Expr;
  readonly biasTo?: Expr;
  readonly from?: Expr;
  readonly to?: Expr;
}
export interface AllowNode extends Node {
  readonly kind: 'allow';
  readonly width: Expr;
  /** Edges by name; none: the whole piece. */
  readonly edges: readonly Ref[];
  readonly running?: { readonly width: Expr; readonly at: Ref; readonly along?: Ref };
  /** The one edge has this width between two places. */
  readonly stretch?: { readonly from: Place; readonly to: Place; readonly at: Span };
}
export interface InlayNode extends Node {
  readonly kind: 'inlay';
  readonly width: Expr;
  readonly edges: readonly Ref[];
}
export interface CornerNode extends Node {
  readonly kind: 'corner';
  readonly point: Expr;
  readonly how: 'mitred' | 'squared' | 'stepped' | 'turned-back' | 'as-the-seam-folds';
}
export interface NotchNode extends Node {
  readonly kind: 'notch';
  readonly name: Name;
  /** An edge (`front.side`, `side`) or, at top level, a seam. */
  readonly on: Expr;
  readonly place: Place;
  readonly count: 1 | 2 | 3;
  readonly countStated: boolean;
  readonly when?: Expr;
}
export interface Pressing extends Node {
  readonly way: 'toward' | 'up' | 'down' | 'open';
  readonly toward?: Expr;
}
/** A dart laid on an edge, or (without `on`) the rest of a dart drafted in the outline. */
export interface DartNode extends Node {
  readonly kind: 'dart';
  readonly name: Name;
  readonly on?: Expr;
  readonly place?: Place;
  readonly width?: Expr;
  readonly long?: Expr;
  readonly swingsAbout?: Expr;
  readonly sewnTo?: Expr;
  readonly pressed?: Pressing;
}
export interface FishDartNode extends Node {
  readonly kind: 'fish-dart';
  readonly name: Name;
  readonly from: Expr;
  readonly to: Expr;
  readonly width: Expr;
  readonly place: Place;
  readonly pressed?: Pressing;
}
export type MarkWord =
  'mark' | 'button' | 'buttonhole' | 'drill' | 'eyelet' | 'bone' | 'tape' | 'topstitch' | 'crease';
export interface MarkNode extends Node {
  readonly kind: 'mark';
  readonly word: MarkWord;
  readonly name: Name;
  readonly phrase: Expr;
  readonly size?: MarkSize;
  /** `, along the edge`: of a buttonhole, which else lies across it. */
  readonly lengthways: boolean;
}
/** `, 18mm wide` of a button, `, 2.2cm long` of a buttonhole */
export interface MarkSize {
  readonly by: Expr;
  readonly word: 'wide' | 'long';
}
export interface BalanceNode extends Node {
  readonly kind: 'balance';
  readonly name: Name;
  readonly from: Expr;
  readonly to: Expr;
}
/** `buttons fronts = 8 along front-edge from PLACE to PLACE` */
export interface MarksNode extends Node {
  readonly kind: 'marks';
  readonly word: 'marks' | 'buttons' | 'buttonholes' | 'drills' | 'eyelets' | 'bones';
  readonly name: Name;
  readonly count: Expr;
  readonly along: Expr;
  readonly from?: Place;
  readonly to?: Place;
  readonly size?: MarkSize;
  readonly lengthways: boolean;
}
export interface LabelNode extends Node {
  readonly kind: 'label';
  readonly text: Text;
  readonly place?: Expr;
}
export interface PleatsNode extends Node {
  readonly kind: 'pleats';
  readonly name: Name;
  readonly count: Expr;
  readonly form: 'knife' | 'box' | 'inverted';
  readonly on: Expr;
  /** `at 5cm, 10cm from cb` */
  readonly places?: { readonly distances: readonly Expr[]; readonly from: Expr };
  readonly from?: Place;
  readonly to?: Place;
  readonly taking?: Expr;
  readonly folds?: Expr;
  readonly stitchedDown?: Expr;
  readonly added: boolean;
  readonly outOfWidth: boolean;
}
export interface GathersNode extends Node {
  readonly kind: 'gathers';
  readonly name: Name;
  readonly on: Expr;
  readonly from?: Place;
  readonly to?: Place;
  readonly length: Expr;
}

export interface SwingNode extends Node {
  readonly kind: 'swing';
  readonly dart: Expr;
  readonly share?: Expr;
  readonly to: Expr;
  readonly place: Place;
}
export interface CloseNode extends Node {
  readonly kind: 'close';
  readonly dart: Expr;
  readonly into: Expr;
}
export interface SlashNode extends Node {
  readonly kind: 'slash';
  readonly from: Expr;
  readonly to: Expr;
  readonly hinge: Expr;
  readonly open: Expr;
}
export interface SpreadNode extends Node {
  readonly kind: 'spread';
  readonly width: Expr;
  readonly along: Expr;
  readonly to: Expr;
}
export interface LengthenNode extends Node {
  readonly kind: 'lengthen' | 'shorten' | 'widen';
  readonly by: Expr;
  readonly line: Expr;
}
export interface TrueNode extends Node {
  readonly kind: 'true';
  readonly edge: Expr;
}
export interface SmoothNode extends Node {
  readonly kind: 'smooth';
  readonly point: Expr;
  readonly by: Expr;
}

/**
 * Its block holds a `ShareNode` statement for every share that has a block of its own, in order; a share without one
 * has none. `along` names the cut: `name` is the bare name after it, or the one after `as`. `when` stands before `into`, or
 * at the end.
 */
export interface DivideNode extends Node {
  readonly kind: 'divide';
  readonly piece: Expr;
  /** The line, or the darts, that it is cut through. */
  readonly through: readonly Expr[];
  readonly along?: { readonly line: Expr; readonly name?: Name };
  readonly into: readonly { readonly name: Name; readonly holding?: Expr }[];
  readonly when?: Expr;
}
/** A share of a divide with its block: cutting words and further work, as in a worked piece. */
export interface ShareNode extends Node {
  readonly kind: 'share';
  readonly name: Name;
  readonly holding?: Expr;
}
export interface JoinNode extends Node {
  readonly kind: 'join';
  readonly one: Expr;
  readonly other: Expr;
  readonly into: Name;
  readonly when?: Expr;
}
export interface FacingNode extends Node {
  readonly kind: 'facing';
  readonly name: Name;
  readonly of: Ref;
  readonly along: readonly Expr[];
  readonly deep: Expr;
  readonly when?: Expr;
}
export interface BandNode extends Node {
  readonly kind: 'band';
  readonly name: Name;
  readonly for: Edges;
  readonly wide: Expr;
  readonly underlap?: { readonly by: Expr; readonly at: Side };
  readonly when?: Expr;
}
export interface StripNode extends Node {
  readonly kind: 'strip';
  readonly name: Name;
  readonly length: Expr;
  readonly width: Expr;
  readonly onBias: boolean;
  readonly cloth?: Name;
  readonly when?: Expr;
}

/** One edge, or a stretch of it, in a seam or a finish. */
export interface Sewn extends Node {
  readonly edge: Ref;
  readonly from?: Place;
  readonly to?: Place;
  readonly reversed: boolean;
}
export interface Edges extends Node {
  readonly parts: readonly Sewn[];
}
export type Ease = Node &
  (
    | {
        readonly kind: 'easing';
        readonly low: Expr;
        readonly high?: Expr;
        readonly of?: Ref;
        readonly between?: { readonly one: Expr; readonly other: Expr };
      }
    | { readonly kind: 'gathered'; readonly ratio: Expr; readonly to: Expr }
    | { readonly kind: 'stretched'; readonly by: Expr; readonly of?: Ref }
    | { readonly kind: 'within'; readonly by: Expr }
  );
export type Sharing = Node &
  (
    | { readonly kind: 'none'; readonly side: 'below' | 'above'; readonly points: readonly Expr[] }
    | { readonly kind: 'share'; readonly share: Expr; readonly of: Ref }
  );
export interface Opening extends Node {
  readonly how: 'zip' | 'buttoned' | 'laced' | 'hooked' | 'left-open';
  readonly length?: Expr;
  readonly from?: Expr;
  readonly to?: Expr;
  readonly side?: Side;
}
export interface SeamNode extends Node {
  readonly kind: 'seam';
  readonly name: Name;
  readonly left: Edges;
  /** `itsPair`: the edge is sewn to the same edge of its mirrored twin. */
  readonly right: Edges | 'its-pair';
  readonly eases: readonly Ease[];
  readonly sharing: readonly Sharing[];
  readonly openings: readonly Opening[];
  readonly when?: Expr;
}
export interface FinishNode extends Node {
  readonly kind: 'finish';
  readonly name: Name;
  readonly edges: readonly Sewn[];
  readonly how: 'turned-up' | 'turned-twice' | 'bound' | 'faced' | 'rolled' | 'selvedge' | 'raw';
  readonly width?: Expr;
  readonly facedBy?: Ref;
  readonly when?: Expr;
}

/**
 * A statement of a later part of the language (traces, fittings, cloth): recognised by its head, its words kept,
 * and said plainly to be unbuilt by the phase that would act on it.
 */
export interface LaterNode extends Node {
  readonly kind: 'later';
  /** The head word: `trace`, `grade`, `fitting`, `cutday`, `cloth`, `notion`, or a line of their blocks. */
  readonly word: string;
  readonly name?: Name;
}

/** A statement that no rule could read; what it would have defined is kept when that can be told. */
export interface BrokenNode extends Node {
  readonly kind: 'broken';
  readonly word?: string;
  readonly name?: Name;
}

export type StatementNode =
  | PatternNode
  | UseNode
  | UnitsNode
  | ToleranceNode
  | DraftedForNode
  | MeasureNode
  | UsualNode
  | AcceptNode
  | LetNode
  | ChooseNode
  | SolveNode
  | ExpectNode
  | BodyNode
  | TakenNode
  | MeasuredNode
  | SizesNode
  | SizeRowNode
  | RowNode
  | DraftNode
  | DrawnAsNode
  | ShapeNode
  | CircleNode
  | PieceNode
  | LiningNode
  | OutlineNode
  | HoleNode
  | EdgeNode
  | CutNode
  | FoldNode
  | GrainNode
  | AllowNode
  | InlayNode
  | CornerNode
  | NotchNode
  | DartNode
  | FishDartNode
  | MarkNode
  | BalanceNode
  | MarksNode
  | LabelNode
  | PleatsNode
  | GathersNode
  | SwingNode
  | CloseNode
  | SlashNode
  | SpreadNode
  | LengthenNode
  | TrueNode
  | SmoothNode
  | DivideNode
  | ShareNode
  | JoinNode
  | FacingNode
  | BandNode
  | StripNode
  | SeamNode
  | FinishNode
  | LaterNode
  | BrokenNode;

/** What the grammar itself has to say of a statement: a code of the catalogue, the words, and a repair. */
export interface SyntaxProblem {
  readonly code: string;
  readonly message: string;
  readonly at: Span;
  readonly fixes: readonly SyntaxFix[];
}
export interface SyntaxFix {
  readonly title: string;
  readonly edits: readonly { readonly at: Span; readonly text: string }[];
}

/**
 * One statement. `node`, `text` and `problems` never change; `start`, `end` and `doc` do when the file is edited round
 * it. A statement whose text did not change stays the same object over an edit; one that owns a block is a new object
 * when something in its block changed, but keeps its `node`.
 */
export interface Statement {
  /** Its first character, counted from `TopLevel.offset` of the top-level statement it lies in. */
  start: number;
  /** The statement's own text without its block (for `draft skirt {` up to the brace's line). */
  readonly text: string;
  readonly node: StatementNode;
  readonly problems: readonly SyntaxProblem[];
  /** The comment lines directly above, without `#` and one blank; '' when there are none. */
  doc: string;
  /** What holds it: a kind of block, the file, or a divide's block of shares. */
  readonly inside:
    | 'file'
    | 'draft'
    | 'piece'
    | 'work'
    | 'outline'
    | 'body'
    | 'sizes'
    | 'trace'
    | 'grade'
    | 'fitting'
    | 'cloth'
    | 'share';
  /** The statements of its block, for those that own one. */
  readonly block?: readonly Statement[];
  /** One past the last character it covers, with its block, counted like `start`. */
  end: number;
}

/** A top-level statement and where it stands in the file. */
export interface TopLevel {
  /** First character in the file (of its documentation comment when it has one). */
  offset: number;
  /** Its text in the file, from `offset`, with its comment and block. */
  readonly text: string;
  readonly statement: Statement;
}

/** A parsed file. `items` are in file order. */
export interface SourceFile {
  readonly text: string;
  readonly items: readonly TopLevel[];
}
