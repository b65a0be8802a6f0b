/** Which part of the sheet is seen, and how large: pure arithmetic on millimetres and screen pixels. */
import type { Frame } from '../../../server/drawing/model';

export interface Camera {
  /** Screen pixels a millimetre. */
  readonly zoom: number;
  /** The sheet's millimetre at the top left corner of the stage. */
  readonly left: number;
  readonly top: number;
  /** The whole drawing is to be seen until the person moves it. */
  readonly fit: boolean;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** A CSS pixel is 1/96 of an inch (CSS Values and Units, section 6.2): full size as far as the screen tells its own. */
export const FULL_SIZE = 96 / 25.4;

export const MOST_ZOOM = 40;
export const LEAST_ZOOM = 0.02;
const FIT_MARGIN_PX = 28;
/** So much of the drawing stays in sight, however far it is pushed. */
const HELD_IN_SIGHT_PX = 48;
/** A fitted drawing that fills less than this of the stage is fitted again. */
const FILLED_ENOUGH = 0.6;

const within = (value: number, low: number, high: number) => Math.min(Math.max(value, low), high);

export function fitTo(frame: Frame, stage: Size): Camera {
  const width = Math.max(frame.right - frame.left, 1);
  const height = Math.max(frame.bottom - frame.top, 1);
  const room = (px: number) => Math.max(px - 2 * FIT_MARGIN_PX, 10);
  const zoom = within(
    Math.min(room(stage.width) / width, room(stage.height) / height),
    LEAST_ZOOM,
    MOST_ZOOM,
  );
  return { ...centredOn(frame, stage, zoom), fit: true };
}

/** Full size, about the middle of what is seen. */
export function fullSize(camera: Camera, stage: Size): Camera {
  return zoomAbout(camera, FULL_SIZE / camera.zoom, stage.width / 2, stage.height / 2);
}

/** Zooms by a factor so that what lies under the stage's pixel (x, y) stays there. */
export function zoomAbout(camera: Camera, factor: number, x: number, y: number): Camera {
  const zoom = within(camera.zoom * factor, LEAST_ZOOM, MOST_ZOOM);
  const kept = (at: number, px: number) => at + px / camera.zoom - px / zoom;
  return { zoom, left: kept(camera.left, x), top: kept(camera.top, y), fit: false };
}

/** Moves what is seen by pixels: positive shows more of the right and the bottom. */
export function panBy(camera: Camera, dx: number, dy: number): Camera {
  return { ...camera, left: camera.left + dx / camera.zoom, top: camera.top + dy / camera.zoom, fit: false };
}

/** Pushes the camera back when hardly anything of the drawing would be left in sight. */
export function heldInSight(camera: Camera, frame: Frame, stage: Size): Camera {
  const hold = HELD_IN_SIGHT_PX / camera.zoom;
  const axis = (at: number, low: number, high: number, px: number) =>
    within(
      at,
      Math.min(low + hold - px / camera.zoom, high - hold),
      Math.max(high - hold, low + hold - px / camera.zoom),
    );
  return {
    ...camera,
    left: axis(camera.left, frame.left, frame.right, stage.width),
    top: axis(camera.top, frame.top, frame.bottom, stage.height),
  };
}

/** A fitted view follows the drawing only when it must, so that it does not tremble with each key typed. */
export function needsFitting(camera: Camera, frame: Frame, stage: Size): boolean {
  if (!camera.fit) return false;
  const fitted = fitTo(frame, stage);
  const right = camera.left + stage.width / camera.zoom;
  const bottom = camera.top + stage.height / camera.zoom;
  const cut =
    frame.left < camera.left || frame.top < camera.top || frame.right > right || frame.bottom > bottom;
  return cut || camera.zoom < FILLED_ENOUGH * fitted.zoom;
}

/** The smallest move that brings a frame of the sheet into sight; its middle when it is larger than the stage. */
export function revealing(camera: Camera, frame: Frame, stage: Size): Camera {
  const margin = FIT_MARGIN_PX / camera.zoom;
  const axis = (at: number, low: number, high: number, px: number) => {
    const span = px / camera.zoom;
    if (low >= at && high <= at + span) return at;
    if (high - low + 2 * margin > span) return (low + high - span) / 2;
    return low < at ? low - margin : high + margin - span;
  };
  const left = axis(camera.left, frame.left, frame.right, stage.width);
  const top = axis(camera.top, frame.top, frame.bottom, stage.height);
  return left === camera.left && top === camera.top ? camera : { ...camera, left, top, fit: false };
}

/** The place of the paper under a pixel of the stage. */
export const underPixel = ({ zoom, left, top }: Camera, x: number, y: number) => ({
  x: left + x / zoom,
  y: top + y / zoom,
});

function centredOn(frame: Frame, stage: Size, zoom: number): Omit<Camera, 'fit'> {
  const left = (frame.left + frame.right - stage.width / zoom) / 2;
  const top = (frame.top + frame.bottom - stage.height / zoom) / 2;
  return { zoom, left, top };
}
