/** A small pattern with a table of sizes, and its drawings for each size. */
import { draw } from '../../server/drawing/draw';
import type { Sized } from '../../server/drawing/nest';
import { Workshop } from '../../server/drafting/workshop';
import { doorTo, MAIN } from './drafts';

/** Grows by 40 mm across and 10 mm down a size; its patch is not graded. */
export const graded = `pattern "Deck bucket"
drafted for hands M

sizes hands {
  size S M L
  bust 88cm 92cm 96cm
  hip 90cm 91cm 92cm
}

draft side {
  point top-cf = origin
  point top-side = top-cf right bust - 80cm
  point foot-side = top-side down hip - 60cm
  point foot-cf = top-cf down hip - 60cm
  point patch-a = origin
  point patch-b = patch-a right 10cm
  point patch-c = patch-b down 12cm
  point patch-d = patch-a down 12cm
}

piece front of side {
  cut 1 on fold
  outline from top-cf {
    top straight to top-side
    side straight to foot-side
    foot straight to foot-cf
    centre straight to top-cf
  }
  fold centre
  grain along centre
  allow 1cm
}

piece patch of side {
  cut 1
  outline from patch-a {
    top straight to patch-b
    right-side straight to patch-c
    foot straight to patch-d
    left-side straight to patch-a
  }
  grain from patch-a to patch-d
  allow 1cm
}

finish hems front.top, front.side, front.foot turned up 1cm
finish patch-hems patch.top, patch.right-side, patch.foot, patch.left-side turned up 1cm
`;

/** A pattern drafted and drawn for sizes of the table that it is drafted for. */
export function sizedDrawings(text: string, sizes: readonly string[]): readonly Sized[] {
  const workshop = new Workshop(doorTo(text));
  workshop.setText(MAIN, text);
  const { body } = workshop.pattern(MAIN);
  return sizes.map((size) => ({
    size,
    drawing: draw(workshop.pattern(MAIN, { for: { name: body!.name, size } })),
  }));
}
