/** Every code with its severity and title, in the order of the work: text, names, values, shapes, pieces, sewing. */
import type { Severity } from '../drafting/finding';
import type { Check } from './check';
import { armholeRing } from './armhole-ring';
import { bentDart } from './bent-dart';
import { biasOnFold } from './bias-on-fold';
import { boneEnds } from './bone-ends';
import { buttonOffBust } from './button-off-bust';
import { buttonSpacing } from './button-spacing';
import { cannotGetOn } from './cannot-get-on';
import { cornerAtFold } from './corner-at-fold';
import { crookedGrain } from './crooked-grain';
import { crossingOutline } from './crossing-outline';
import { crossedDart } from './crossed-dart';
import { crowdedDarts } from './crowded-darts';
import { dartNearEdge } from './dart-near-edge';
import { dartOffPiece } from './dart-off-piece';
import { doneTwice } from './done-twice';
import { eyeletPlaces } from './eyelet-places';
import { holeOutside } from './hole-outside';
import { holeTooSmall } from './hole-too-small';
import { idleFold } from './idle-fold';
import { implausibleMeasurement } from './implausible-measurement';
import { insideLeg } from './inside-leg';
import { kinkedEdge } from './kinked-edge';
import { lowCollar } from './low-collar';
import { lowSleeveEase } from './low-sleeve-ease';
import { markOutside } from './mark-outside';
import { mismatchedSeam } from './mismatched-seam';
import { narrowButtonStand } from './narrow-button-stand';
import { noFold } from './no-fold';
import { noGrain } from './no-grain';
import { noNotch } from './no-notch';
import { notCut } from './not-cut';
import { noRightSideUp } from './no-right-side-up';
import { notchPlaces } from './notch-places';
import { notchUnderDart } from './notch-under-dart';
import { notchesApart } from './notches-apart';
import { oldMeasurements } from './old-measurements';
import { overfullPleats } from './overfull-pleats';
import { princessEase } from './princess-ease';
import { raised } from './raised';
import { sewnUncut } from './sewn-uncut';
import { shortEdge } from './short-edge';
import { shoulderEase } from './shoulder-ease';
import { sidedFold } from './sided-fold';
import { sidedFoldLengths } from './sided-fold-lengths';
import { singleBackNotch } from './single-back-notch';
import { sleeveEase } from './sleeve-ease';
import { sleeveHeight } from './sleeve-height';
import { smoothedAway } from './smoothed-away';
import { tightLining } from './tight-lining';
import { unclosedOutline } from './unclosed-outline';
import { unequalLegs } from './unequal-legs';
import { unevenLacing } from './uneven-lacing';
import { unevenSides } from './uneven-sides';
import { unfinishedEdge } from './unfinished-edge';
import { unlikeFacing } from './unlike-facing';
import { unlikeFoundation } from './unlike-foundation';
import { unknownRange } from './unknown-range';
import { unlikeButtons } from './unlike-buttons';
import { unlikeUnderCollar } from './unlike-under-collar';
import { unlikelyGathers } from './unlikely-gathers';
import { unlikelyProportion } from './unlikely-proportion';
import { unsewnPiece } from './unsewn-piece';
import { unusualDart } from './unusual-dart';
import { unusualEase } from './unusual-ease';
import { unusualFacing } from './unusual-facing';
import { unusualFork } from './unusual-fork';
import { unusualUnderlap } from './unusual-underlap';
import { unusualZip } from './unusual-zip';
import { contradictedAllowance } from './contradicted-allowance';
import { fullHem } from './full-hem';
import { mistypedMeasurement } from './mistyped-measurement';
import { missingAllowance } from './missing-allowance';
import { narrowAllowance } from './narrow-allowance';
import { tightAllowance } from './tight-allowance';
import { unequalAllowances } from './unequal-allowances';
import { unevenHem } from './uneven-hem';
import { wideDart } from './wide-dart';
import type { Usual } from './usual';

export const catalogue: readonly Check[] = [
  ...raised,
  implausibleMeasurement,
  mistypedMeasurement,
  unlikelyProportion,
  unlikeFoundation,
  unevenSides,
  oldMeasurements,
  sidedFold,
  sidedFoldLengths,
  unclosedOutline,
  crossingOutline,
  shortEdge,
  holeOutside,
  holeTooSmall,
  noGrain,
  crookedGrain,
  biasOnFold,
  noFold,
  idleFold,
  noRightSideUp,
  markOutside,
  narrowButtonStand,
  buttonSpacing,
  buttonOffBust,
  unlikeButtons,
  eyeletPlaces,
  unevenLacing,
  boneEnds,
  unequalLegs,
  bentDart,
  wideDart,
  unusualDart,
  dartOffPiece,
  dartNearEdge,
  crossedDart,
  smoothedAway,
  crowdedDarts,
  notchUnderDart,
  overfullPleats,
  unlikelyGathers,
  cornerAtFold,
  unusualFacing,
  tightLining,
  unusualUnderlap,
  mismatchedSeam,
  unlikeFacing,
  lowCollar,
  unlikeUnderCollar,
  kinkedEdge,
  shoulderEase,
  princessEase,
  sleeveEase,
  lowSleeveEase,
  sleeveHeight,
  armholeRing,
  insideLeg,
  cannotGetOn,
  unusualZip,
  notchPlaces,
  singleBackNotch,
  notchesApart,
  noNotch,
  unfinishedEdge,
  doneTwice,
  notCut,
  sewnUncut,
  missingAllowance,
  narrowAllowance,
  unequalAllowances,
  contradictedAllowance,
  tightAllowance,
  unevenHem,
  fullHem,
  unsewnPiece,
  unusualEase,
  unusualFork,
  unknownRange(() => ranges),
];

/** Every range that some check judges by. */
export const ranges: readonly Usual[] = catalogue.flatMap((entry) =>
  entry.by === 'judgement' ? (entry.usual ?? []) : [],
);

const severities: ReadonlyMap<string, Severity> = new Map(
  catalogue.map(({ code, severity }) => [code, severity]),
);

const firm: ReadonlySet<string> = new Set(catalogue.flatMap((entry) => (entry.firm ? [entry.code] : [])));

/** Whether findings of a code can be neither accepted nor set to another severity. */
export const isFirm = (code: string): boolean => firm.has(code);

/** A code that is not in the catalogue is a fault of ours; it is shown as an error rather than hidden. */
export const severityOf = (code: string): Severity => severities.get(code) ?? 'error';
