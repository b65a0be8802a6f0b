/** What is seen of the paper, and how large: holds the camera, and paints once a frame. */
import type { Frame, Spot } from '../../../server/drawing/model';
import * as camera from './camera';
import { ZOOM_STEP } from './keyboard';

/** What the eye looks at. */
export interface Sight {
  /** All that is drawn. */
  frame(): Frame;
  size(): camera.Size;
  paint(seen: camera.Camera): void;
  changed(): void;
}

export class Eye {
  camera: camera.Camera = { zoom: 0, left: 0, top: 0, fit: true };
  private painting = 0;

  constructor(private readonly sight: Sight) {}

  /** The camera stays where it is, unless it shows the whole and the whole has outgrown it. */
  follow(first: boolean): void {
    const frame = this.sight.frame();
    const fits = this.camera.fit && (first || camera.needsFitting(this.camera, frame, this.sight.size()));
    if (fits) this.fit();
    else this.look(this.camera);
  }

  look(next: camera.Camera): void {
    this.camera = next.fit ? next : camera.heldInSight(next, this.sight.frame(), this.sight.size());
    this.painting ||= requestAnimationFrame(() => {
      this.painting = 0;
      if (this.camera.zoom > 0) this.sight.paint(this.camera);
    });
    this.sight.changed();
  }

  fit(): void {
    this.look(camera.fitTo(this.sight.frame(), this.sight.size()));
  }

  zoomIn(): void {
    this.zoom(ZOOM_STEP);
  }

  zoomOut(): void {
    this.zoom(1 / ZOOM_STEP);
  }

  fullSize(): void {
    this.look(camera.fullSize(this.camera, this.sight.size()));
  }

  pan(dx: number, dy: number): void {
    this.look(camera.panBy(this.camera, dx, dy));
  }

  /** About a pixel of the stage, or its middle. */
  zoom(factor: number, x?: number, y?: number): void {
    const { width, height } = this.sight.size();
    this.look(camera.zoomAbout(this.camera, factor, x ?? width / 2, y ?? height / 2));
  }

  reveal(frame: Frame): void {
    this.look(camera.revealing(this.camera, frame, this.sight.size()));
  }

  revealSpot({ x, y }: Spot): void {
    this.reveal({ left: x, right: x, top: y, bottom: y });
  }

  /** The place of the paper under a pixel of the stage. */
  under(x: number, y: number): Spot {
    return camera.underPixel(this.camera, x, y);
  }

  /** The room is as large as it is now. */
  resized(): void {
    if (this.camera.fit && this.camera.zoom > 0) this.fit();
    else this.look(this.camera);
  }
}
