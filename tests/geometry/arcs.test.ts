/** Arcs and circles against the circle itself. */
import assert from 'node:assert/strict';
import {
  arc,
  arcByAngle,
  circle,
  cubic,
  distance,
  ORIGIN,
  pointAt,
  point,
  segmentLength,
  signedArea,
} from '../../server/geometry';
import { near, nearPoint, spread } from '../support/curves';

describe('arcs and circles', () => {
  it('one cubic is as far from its arc as the published tables say', () => {
    // Greatest radial error of k = 4/3 tan(θ/4), computed; 90° as at spencermortensen.com/articles/bezier-circle.
    const table = [
      [30, 3.73e-7],
      [45, 4.25e-6],
      [60, 2.39e-5],
      [90, 2.7253e-4],
      [120, 1.54e-3],
      [180, 1.84e-2],
    ];
    for (const [degrees, error] of table) {
      const angle = (degrees! * Math.PI) / 180;
      const k = (4 / 3) * Math.tan(angle / 4);
      const end = point(Math.cos(angle), Math.sin(angle));
      const seg = cubic(point(1, 0), point(1, k), point(end.x + k * end.y, end.y - k * end.x), end);
      let worst = 0;
      for (let i = 0; i <= 1000; i++) worst = Math.max(worst, distance(ORIGIN, pointAt(seg, i / 1000)) - 1);
      near(worst, error!, 0.005 * error!, `${degrees} degrees`);
    }
    const k = 0.5522847498;
    near(segmentLength(cubic(point(1, 0), point(1, k), point(k, 1), point(0, 1))), 1.5710167, 5e-8);
  });

  it('a drawn circle strays from the circle by less than a billionth of its radius', () => {
    const ring = circle(point(300, -200), 700);
    for (const p of spread(ring, 3000)) near(distance(p, point(300, -200)), 700, 5.5e-10 * 700);
    near(ring.length, 2 * Math.PI * 700, 1e-9 * 4400);
    near(signedArea([ring]), Math.PI * 700 * 700, 1e-9 * 1.6e6);
    near(ring.turning(), 2 * Math.PI, 1e-12);
    assert.deepEqual(ring.start, ring.end);
  });

  it('the shorter way and the longer way together make the circle', () => {
    const [p, q] = [point(10, 0), point(0, 10)];
    const short = arc(ORIGIN, p, q, false);
    const long = arc(ORIGIN, p, q, true);
    near(short.length, 5 * Math.PI, 1e-7);
    near(long.length, 15 * Math.PI, 1e-7);
    nearPoint(short.pointAt(short.length / 2), point(Math.sqrt(50), Math.sqrt(50)), 1e-7);
    nearPoint(long.pointAt(long.length / 2), point(-Math.sqrt(50), -Math.sqrt(50)), 1e-7);
    for (const path of [short, long]) assert.deepEqual([path.start, path.end], [p, q]);
  });

  it('half a circle goes clockwise on paper', () => {
    const half = arc(ORIGIN, point(-10, 0), point(10, 0), false);
    nearPoint(half.pointAt(half.length / 2), point(0, -10), 1e-6);
  });

  it('an arc by its angle turns as rotations turn', () => {
    const path = arcByAngle(ORIGIN, point(10, 0), -Math.PI / 2);
    nearPoint(path.end, point(0, -10), 1e-12);
    near(path.length, 5 * Math.PI, 1e-7);
  });

  it('an arc whose ends lie at different radii still ends where it was told to', () => {
    const path = arc(ORIGIN, point(10, 0), point(0, 12), false);
    assert.deepEqual(path.end, point(0, 12));
    for (const s of [0.2, 0.5, 0.8]) {
      const p = path.pointAt(s * path.length);
      near(distance(p, ORIGIN), 10 + (2 * Math.atan2(p.y, p.x)) / (Math.PI / 2), 1e-3);
    }
  });
});
