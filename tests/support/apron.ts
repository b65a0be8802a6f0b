/** A small whole pattern of two pieces that share nothing but a file: a change of one leaves the other alone. */

export const apron = `pattern "Stage hand's apron"

# how wide it is at the waist
choose width = 60cm in 40cm .. 80cm
choose bib-height = 25cm in 20cm .. 30cm

draft sheet {
  point waist-left = origin
  point waist-right = waist-left right width
  point hem-right = waist-right down 50cm
  point hem-left = waist-left down 50cm
}

draft bib-sheet {
  point top-left = origin
  point top-right = top-left right 30cm
  point foot-right = top-right down bib-height
  point foot-left = top-left down bib-height
  line diagonal = top-left to foot-right
}

piece skirt of sheet {
  cut 1
  outline from waist-left {
    waist straight to waist-right
    near-side straight to hem-right
    hem straight to hem-left
    far-side straight to waist-left
  }
  grain from waist-left to hem-left
  allow 1.5cm
}

piece bib of bib-sheet {
  cut 1
  outline from top-left {
    top straight to top-right
    near-side straight to foot-right
    foot straight to foot-left
    far-side straight to top-left
  }
  grain from top-left to foot-left
  allow 1.5cm
}

finish skirt-edges skirt.waist, skirt.near-side, skirt.hem, skirt.far-side turned twice 1cm
finish bib-edges bib.top, bib.near-side, bib.foot, bib.far-side turned twice 1cm
`;

/** The apron with one stretch of its text replaced; the stretch must be there. */
export function apronWith(words: string, others: string): string {
  if (!apron.includes(words)) throw new Error(`the apron does not say: ${words}`);
  return apron.replace(words, others);
}
