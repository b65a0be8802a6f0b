/** Vectors and maps of the plane. */
import assert from 'node:assert/strict';
import {
  angleBetween,
  apply,
  applyVector,
  compose,
  inverse,
  isMirroring,
  isRigid,
  layOn,
  lerp,
  mirror,
  normalised,
  perpendicular,
  point,
  rotate,
  rotation,
  scaling,
  translation,
} from '../../server/geometry';
import { near, nearPoint } from '../support/curves';

describe('maps of the plane', () => {
  it('a positive turn is clockwise on paper', () => {
    nearPoint(rotate(point(1, 0), Math.PI / 2), point(0, 1), 1e-15);
    assert.deepEqual(perpendicular(point(1, 0)), point(-0, 1));
    near(angleBetween(point(1, 0), point(0, 1)), Math.PI / 2, 1e-15);
    nearPoint(apply(rotation(point(5, 5), Math.PI / 2), point(6, 5)), point(5, 6), 1e-14);
  });

  it('a vector without a direction has no unit vector', () => {
    assert.equal(normalised(point(0, 0)), undefined);
    assert.equal(normalised(point(Number.NaN, 1)), undefined);
    nearPoint(normalised(point(3e-300, 4e-300)), point(0.6, 0.8), 1e-15);
  });

  it('mirroring twice is the identity and keeps the fold', () => {
    const fold = mirror(point(3, 1), point(7, 4));
    nearPoint(apply(fold, lerp(point(3, 1), point(7, 4), 2.5)), lerp(point(3, 1), point(7, 4), 2.5), 1e-13);
    nearPoint(apply(compose(fold, fold), point(11, -6)), point(11, -6), 1e-13);
    assert.ok(isMirroring(fold) && isRigid(fold));
  });

  it('laid paper has its first point exactly where it was put', () => {
    const laid = layOn(point(1, 2), point(4, 6), point(100, 50), point(100, 150));
    nearPoint(apply(laid, point(1, 2)), point(100, 50), 1e-13);
    nearPoint(apply(laid, point(4, 6)), point(100, 55), 1e-13);
    assert.ok(isRigid(laid) && !isMirroring(laid));
  });

  it('maps are composed in the order of doing and undone by their inverse', () => {
    const both = compose(rotation(point(0, 0), Math.PI / 2), translation(point(10, 0)));
    nearPoint(apply(both, point(1, 0)), point(10, 1), 1e-14);
    nearPoint(applyVector(both, point(1, 0)), point(0, 1), 1e-14);
    nearPoint(apply(compose(both, inverse(both)!), point(7, 9)), point(7, 9), 1e-13);
    assert.equal(inverse(scaling(point(1, 1), 0, 2)), undefined);
    assert.equal(isRigid(scaling(point(1, 1), 1.03, 1)), false);
  });
});
