/**
 * Costumes of a chorus, as text: a shirt, a sleeve set into it and a skirt, each a draft with its pieces and seams. `@`
 * stands for the number of the costume, `~9cm` for a length that is a little different in each.
 */

/** What all costumes of one file share. */
export const HEAD = `pattern "Chorus of the ferry"
use "bodies/company.draft"
drafted for ferrywoman

# one ease for everybody, so that the chorus looks like one
choose bust-ease = 16cm in 12cm .. 30cm
choose hip-ease = 6cm in 4cm .. 12cm
choose hem-drop = 64cm in 40cm .. 90cm
`;

const SHIRT = `
# The shirt of costume @, cut by squares and straight lines but for the neck and the head of the arm.
draft shirt@ {
  let quarter = (bust + bust-ease) / 4
  let neck-half = neck / 4 + ~2.5cm
  let arm-depth = upper-arm / 2 + ~6cm
  let shoulder-drop = ~2.5cm
  let long = nape-to-waist + ~24cm

  # back, centre back at the left
  point top-cb = origin
  point neck-cb = top-cb down ~5cm
  point hem-cb = top-cb down long
  point neck-b = top-cb right neck-half
  point tip-b = top-cb right quarter down shoulder-drop
  point pit-b = tip-b down arm-depth
  point hem-b = hem-cb across to pit-b
  point waist-b = pit-b down ~18cm left 1cm
  line shoulder-line-b = neck-b to tip-b
  line hem-line-b = hem-b to hem-cb
  curve neckline-b = neck-cb to neck-b leaving right arriving square to shoulder-line-b
  curve armhole-b = tip-b to pit-b leaving square to shoulder-line-b arriving down
  curve side-b = pit-b to hem-b through waist-b leaving down arriving square to hem-line-b
  point pitch-b = on armhole-b 1/2 from pit-b

  # front, centre front at the right
  point top-cf = top-cb right 2 * quarter + ~20cm
  point neck-cf = top-cf down ~13cm
  point hem-cf = top-cf down long
  point neck-f = top-cf left neck-half
  point tip-f = top-cf left quarter down shoulder-drop
  point pit-f = tip-f down arm-depth
  point hem-f = hem-cf across to pit-f
  point waist-f = waist-b mirrored across middle-line
  line middle-line = (midpoint of pit-b and pit-f) to (midpoint of hem-b and hem-f)
  line shoulder-line-f = neck-f to tip-f
  line hem-line-f = hem-f to hem-cf
  curve neckline-f = neck-f to neck-cf leaving square to shoulder-line-f arriving right
  curve armhole-f = tip-f to pit-f leaving square to shoulder-line-f arriving down
  curve side-f = pit-f to hem-f through waist-f leaving down arriving square to hem-line-f
  point pitch-f = on armhole-f 1/2 from pit-f

  # where the ribbon is sewn on
  line ribbon-line = (hem-cb up ~8cm) to (hem-cf up 8cm)
  point ribbon-b = where ribbon-line meets side-b
  point ribbon-f = where ribbon-line meets side-f
  line ribbon-edge = hem-line-b parallel ~3cm toward neck-b
  let ring = length(armhole-b) + length(armhole-f)
  let collar = 2 * (length(neckline-b) + length(neckline-f))
}

piece back@ of shirt@ {
  cut 1 on fold
  outline from neck-cb {
    neck along neckline-b to neck-b
    shoulder straight to tip-b
    armhole along armhole-b to pit-b
    side along side-b to hem-b
    hem straight to hem-cb
    centre straight to neck-cb
  }
  fold centre
  grain along centre
  balance line ribbon from ribbon-b to (hem-cb up 8cm)
  allow ~1.5cm
  allow 1cm at neck, armhole
}

piece front@ of shirt@ {
  cut 1 on fold
  outline from neck-f {
    neck along neckline-f to neck-cf
    centre straight to hem-cf
    hem straight to hem-f
    side along side-f to pit-f
    armhole along armhole-f to tip-f
    shoulder straight to neck-f
  }
  fold centre
  grain along centre
  allow ~1.5cm
  allow 1cm at neck, armhole
}

seam shoulder@ front@.shoulder = back@.shoulder
seam side@ front@.side = back@.side
notch pitch-back@ on back@.armhole at pitch-b, double
notch pitch-front@ on front@.armhole at pitch-f, single
notch ribbon-back@ on back@.side at ribbon-b, single
notch ribbon-front@ on front@.side at ribbon-f, single
finish neck@ front@.neck, back@.neck bound ~8mm
finish hems@ front@.hem, back@.hem turned twice ~1.5cm
# it goes on over the head, without an opening
expect shirt@.collar > head - 20cm
`;

const SLEEVE = `
# The sleeve of costume @; its head is as long as the armhole with a little ease.
draft arm@ {
  let girth = upper-arm + ~9cm
  let ease = ~6mm
  let want = shirt@.ring + ease
  solve head-height in 3cm .. 30cm so that length(head-line) = want

  point top = origin
  point head-base = top down head-height
  point under-b = head-base left girth / 2
  point under-f = head-base right girth / 2
  point wrist-mid = top down arm-length
  point wrist-b = wrist-mid left wrist / 2 + ~5cm
  point wrist-f = wrist-mid right wrist / 2 + 5cm
  line slant-b = under-b to top
  line slant-f = under-f to top
  point low-b = (on slant-b 1/4 from under-b) squared from slant-b ~5mm toward wrist-mid
  point high-b = (on slant-b 0.7 from under-b) squared from slant-b ~1.6cm toward lift-b
  point low-f = (on slant-f 1/4 from under-f) squared from slant-f ~1.1cm toward wrist-mid
  point high-f = (on slant-f 3/4 from under-f) squared from slant-f ~1.8cm toward lift-f
  point lift-b = under-b up head-height
  point lift-f = under-f up head-height
  line back-edge = under-b to wrist-b
  line front-edge = under-f to wrist-f
  curve head-b = under-b to top through low-b, high-b leaving square to back-edge arriving right
  curve head-f = top to under-f through high-f, low-f leaving right arriving square to front-edge
  curve head-line = run head-b then head-f
  point crown = on head-line halfway

  # the gathers at the wrist are marked by a row of stitches
  point row-b = on back-edge ~6cm from wrist-b
  point row-f = on front-edge 6cm from wrist-f
  line row = row-b to row-f
  let gathered = distance(row-b, row-f) - wrist
  let underarm = length(back-edge)
  point elbow-b = on back-edge 1/2 from under-b
  point elbow-f = on front-edge 1/2 from under-f
  point elbow = midpoint of elbow-b and elbow-f
  line elbow-line = elbow-b to elbow-f
}

piece sleeve@ of arm@ {
  cut pair
  outline from under-b {
    head along head-b to top
      then along head-f to under-f
    front-seam straight to wrist-f
    hem straight to wrist-b
    back-seam straight to under-b
  }
  grain from top to wrist-mid
  balance line elbow from elbow-b to elbow-f
  allow ~1.5cm
}

seam armhole@ sleeve@.head = back@.armhole + front@.armhole easing arm@.ease
seam underarm@ sleeve@.front-seam = sleeve@.back-seam within 3cm
notch crown@ on sleeve@.head at crown, single
finish cuff@ sleeve@.hem turned up ~3cm
`;

const SKIRT = `
# The skirt of costume @; the side bends over the hip.
draft skirt@ {
  let quarter-hip = (hip + hip-ease) / 4
  let quarter-waist = half-waist / 2 + ~1.5cm
  let dart-width = ~2cm
  let fullness = quarter-hip - quarter-waist - dart-width
  let pocket-mouth = ~16cm

  # back, centre back at the left
  point waist-cb = origin
  point hip-cb = waist-cb down waist-to-hip
  point hem-cb = waist-cb down hem-drop
  point hip-b = hip-cb right quarter-hip
  point hem-b = hem-cb right quarter-hip + ~5cm
  point waist-b = waist-cb right quarter-waist + dart-width up ~1.2cm
  line below-b = hip-b to hem-b
  point aim-b = on below-b ~8cm beyond hip-b
  curve hip-curve-b = waist-b to hip-b arriving along below-b
  curve waistline-b = waist-cb to waist-b leaving right arriving square to hip-curve-b
  curve hem-curve-b = hem-b to hem-cb leaving square to below-b arriving left
  point pocket-top-b = on hip-curve-b ~3cm from waist-b

  # front, centre front at the right
  line mirror-line = (hem-cb right 2 * quarter-hip) to (waist-cb right 2 * quarter-hip)
  point waist-cf = waist-cb mirrored across mirror-line
  point hip-f = hip-b mirrored across mirror-line
  point hem-f = hem-b mirrored across mirror-line
  point hem-cf = hem-cb mirrored across mirror-line
  point waist-f = waist-b mirrored across mirror-line
  line below-f = hip-f to hem-f
  curve hip-curve-f = waist-f to hip-f arriving along below-f
  curve waistline-f = waist-f to waist-cf leaving square to hip-curve-f arriving right
  curve hem-curve-f = hem-cf to hem-f leaving left arriving square to below-f
  point pocket-top-f = on hip-curve-f ~3cm from waist-f

  # the flounce is laid in pleats that are marked on the hem
  point pleat-a = on hem-curve-b 1/4 from hem-b
  point pleat-b = on hem-curve-b 1/2 from hem-b
  point pleat-c = on hem-curve-b 3/4 from hem-b
  line pleat-line-a = pleat-a to (pleat-a up ~6cm)
  line pleat-line-b = pleat-b to (pleat-b up ~6cm)
  line pleat-line-c = pleat-c to (pleat-c up ~6cm)
  let hem-length = length(hem-curve-b) + length(hem-curve-f)
  let pleat-depth = hem-length / 24
}

piece skirt-back@ of skirt@ each side {
  cut pair
  outline from waist-cb {
    waist along waistline-b to waist-b
    side along hip-curve-b to hip-b
      then straight to hem-b
    hem along hem-curve-b to hem-cb
    centre straight to waist-cb
  }
  grain along centre
  balance line hip-line from hip-cb to hip-b
  dart back-dart on waist at 1/2 from waist-cb, dart-width wide, ~11cm long, pressed toward centre
  allow ~1.5cm
}

piece skirt-front@ of skirt@ each side {
  cut pair
  outline from waist-f {
    waist along waistline-f to waist-cf
    centre straight to hem-cf
    hem along hem-curve-f to hem-f
    side straight to hip-f
      then along hip-curve-f to waist-f
  }
  grain along centre
  dart front-dart on waist at 1/2 from waist-cf, dart-width wide, ~9cm long, pressed toward centre
  allow ~1.5cm
}

seam skirt-side@ skirt-front@.side = skirt-back@.side
seam skirt-cb@ skirt-back@.centre = its pair
seam skirt-cf@ skirt-front@.centre = its pair
notch pocket-back@ on skirt-back@.side at pocket-top-b, single
notch pocket-front@ on skirt-front@.side at pocket-top-f, single
notch hip@ on skirt-front@.side at hip-f, single
finish skirt-hem@ skirt-front@.hem, skirt-back@.hem turned up ~4cm
finish skirt-waist@ skirt-front@.waist, skirt-back@.waist raw
expect skirt@.fullness > 0.5cm
`;

/** In the order in which a costume is made: the sleeve takes the armhole of the shirt before it. */
export const COSTUME: readonly string[] = [SHIRT, SLEEVE, SKIRT];

/** One step of a long draft: a wave of ribbon that goes on from where the one before ended. */
export const STEP = `
  # the next wave
  let lift@ = ~3cm + drop& / 8
  let drop@ = lift@ / 2
  point turn@ = tip& right ~4cm up lift@
  point tip@ = turn@ right ~4cm down drop@
  line chord@ = tip& to tip@
  curve wave@ = tip& to tip@ through turn@ leaving right arriving right
  point crest@ = on wave@ 1/2 from tip&
  line rise@ = crest@ to (crest@ squared onto chord@)
`;

/** A draft that a long chain of steps is written into; `%` marks where. */
export const RIBBON = `
draft ribbon {
  let drop = ~1cm
  point tip = origin%
}
`;
