/** What stands on the written sheets: figures beside closed forms and a handbook, the order of sewing, what is left out. */
import assert from 'node:assert/strict';
import { rowNamed, rowsOf, sheetOfSample, sheetOfText } from '../support/written';

const bag = (...more: readonly string[]): string => `pattern "Bag"
draft bag {
  point a = origin
  point b = a right 30cm
  point c = b down 20cm
  point d = a down 20cm
}
piece side of bag {
  cut pair in canvas
  outline from a {
    mouth straight to b
    far straight to c
    foot straight to d
    near straight to a
  }
  grain along near
  allow 1cm
  label "printed with the anchor"
}
${more.join('\n')}
`;

/** A skirt whose front and back are alike, 120 cm round of two. */
const skirtOnYoke = (cut: string): string => `pattern "Deck skirt"
draft flat {
  point a = origin
  point b = a right 30cm
  point c = b down 20cm
  point d = a down 20cm
  point e = c down 50cm
  point f = d down 50cm
}
piece yoke of flat {
  ${cut}
  outline from a {
    waist straight to b
    side straight to c
    foot straight to d
    centre straight to a
  }
  fold centre
  grain along centre
  allow 1cm
}
piece panel of flat {
  ${cut}
  outline from d {
    top straight to c
    side straight to e
    hem straight to f
    centre straight to d
  }
  fold centre
  grain along centre
  allow 1cm
}
seam yoke-side yoke.side = its pair
seam side panel.side = its pair
seam joining panel.top = yoke.foot
finish hem panel.hem turned up 1cm
finish waist yoke.waist raw
`;

describe('a cutting list', () => {
  it('has a table a cloth, with the cloth that each piece takes within its cutting line', () => {
    const lined = bag().replace('cut pair in canvas', 'cut pair in canvas, 1 in ticking');
    const { tables } = sheetOfText('cutting', lined);
    assert.deepEqual(
      tables.map(({ heading }) => heading),
      ['In canvas', 'In ticking'],
    );
    // 30 by 20 cm with 1 cm all round is 32 by 22 cm: 0.0704 m² each
    assert.deepEqual(
      tables.map(({ rows }) => rows[0]!.cells),
      [
        ['side', '2', 'in pairs', '', 'along near', '0.070', '0.141', 'printed with the anchor'],
        ['side', '1', 'single', '', 'along near', '0.070', '0.070', 'printed with the anchor'],
      ],
    );
  });

  it('counts a piece on the fold whole, and adds up every cloth', () => {
    const folded = bag()
      .replace('cut pair in canvas', 'cut 1 on fold')
      .replace('grain along near', 'grain along near\n  fold near');
    // (30 + 1) twice by 22 cm
    assert.deepEqual(rowsOf(sheetOfText('cutting', folded)), [
      ['side', '1', 'on the fold', '', 'along near', '0.136', '0.136', 'printed with the anchor'],
      ['in all', '1', '', '', '', '', '0.136', ''],
    ]);
  });

  it('says that a piece on the fold is counted as it opens out: two of them are four halves', () => {
    const folded = (count: number) =>
      sheetOfText(
        'cutting',
        bag()
          .replace('cut pair in canvas', `cut ${count} on fold`)
          .replace('grain along near', 'grain along near\n  fold near'),
      );
    const [row] = rowsOf(folded(2));
    // 31 by 22 cm is a half
    assert.deepEqual(row!.slice(1, 7), ['2', 'on the fold', '', 'along near', '0.136', '0.273']);
    assert.match(folded(2).words.join(' '), /on the fold is counted once, as it opens out/);
    assert.doesNotMatch(sheetOfText('cutting', bag()).words.join(' '), /fold/);
  });

  it('knows no total of pieces without a cutting line, and says which a total lacks', () => {
    const bare = bag().replace('  allow 1cm\n', '');
    const [side, all] = rowsOf(sheetOfText('cutting', bare));
    assert.deepEqual(side!.slice(5, 7), ['-', '-']);
    assert.match(side![7]!, /no cutting line yet$/);
    assert.deepEqual(all, ['in all', '2', '', '', '', '', '-', 'not known: no piece has a cutting line']);
    const flap = `piece flap of bag {
  cut 1 in canvas
  outline from a {
    top straight to b
    slant straight to d
    near straight to a
  }
  grain along near
}`;
    const rows = rowsOf(sheetOfText('cutting', bag(flap)));
    assert.deepEqual(rows.at(-1)!.slice(6), ['0.141', 'without flap: no cutting line yet']);
  });

  it('says which pieces an error keeps from being cut, and lists the others', () => {
    const sheet = sheetOfText(
      'cutting',
      bag('piece flap of bag {\n  cut 1\n  outline from a {\n    top straight to nowhere\n  }\n}'),
    );
    assert.equal(rowNamed(sheet, 'side').cut, '2');
    assert.deepEqual(sheet.after, [
      'Left out, because it has an error or rests on one: flap. See draftwright check.',
    ]);
  });

  it('tells what is cut right side up and what is a step on the way', () => {
    const { after } = sheetOfSample('cutting', 'crew-shirt');
    assert.match(after.join(), /steps on the way: whole-back, whole-front/);
    const { 'right side up': up, how } = rowNamed(sheetOfSample('cutting', 'laced-bodice'), 'front-left');
    assert.deepEqual([up, how], ['yes', 'for the left']);
  });
});

describe('finished measurements', () => {
  it('of a whole circle are the waist with its ease, and the closed form of the hem', () => {
    const sheet = sheetOfSample('finished', 'circle-skirt');
    // waist 74.5 cm and 1 cm of ease; a hem 62 cm further out is 2 pi times 62 cm longer: 75.5 + 389.557
    assert.deepEqual(rowNamed(sheet, 'waist'), {
      '': 'waist',
      ...{ where: 'edges of back and front', 'told of': 'all round' },
      ...{ finished: '75.50', body: '74.50', ease: '+1.00' },
    });
    const hem = rowNamed(sheet, 'hem');
    assert.deepEqual([hem.finished, hem.body], [(75.5 + 2 * Math.PI * 62).toFixed(2), '']);
  });

  it('of a skirt are the hip and its ease, along its hip line', () => {
    const hip = rowNamed(sheetOfSample('finished', 'harbour-skirt'), 'hip');
    assert.equal(hip.where, 'hip-line of back and front');
    assert.deepEqual([hip.finished, hip.body, hip.ease], ['105.00', '101.00', '+4.00']);
  });

  it('of a block drafted after a handout are its 101 cm of hip for a hip of 96 cm', () => {
    // WikiEducator, "Handout for drafting skirt block": half of the hip and 2.5 cm across, 50.5 cm
    const half = `drafted for student-size
body student-size {
  hip 96cm
}
draft block {
  point waist-cb = origin
  point waist-cf = waist-cb right hip / 2 + 2.5cm
  point hip-cb = waist-cb down 20cm
  point hip-cf = hip-cb across to waist-cf
  point hem-cb = waist-cb down 60cm
  point hem-cf = hem-cb across to waist-cf
}
piece skirt of block {
  cut pair
  outline from waist-cb {
    waist straight to waist-cf
    front straight to hem-cf
    hem straight to hem-cb
    back straight to waist-cb
  }
  balance line hip-line from hip-cb to hip-cf
  grain along back
  allow 1cm
}
seam front skirt.front = its pair
seam back skirt.back = its pair
`;
    const { finished, ease } = rowNamed(sheetOfText('finished', half), 'hip');
    assert.deepEqual([finished, ease], ['101.00', '+5.00']);
  });

  it('know no girth of an edge that lies on the fold', () => {
    const sheet = sheetOfText(
      'finished',
      `draft bag {
  point a = origin
  point b = a right 22cm
  point c = b down 26cm
  point d = a down 26cm
}
piece sack of bag {
  cut 1 on fold
  outline from a {
    mouth straight to b
    side straight to c
    foot straight to d
    far-side straight to a
  }
  fold foot
  grain along side
  allow 1cm
}
seam side sack.side = its pair
seam far-side sack.far-side = its pair
`,
    );
    assert.equal(rowNamed(sheet, 'mouth').finished, '44.00');
    const foot = rowNamed(sheet, 'foot');
    assert.deepEqual([foot.where, foot.finished], ['sack.foot, on the fold', '22.00']);
  });

  it('leave out what can’t be told, and say what would tell it', () => {
    const { tables, after } = sheetOfSample('finished', 'laced-bodice');
    assert.deepEqual(
      tables.map(({ heading }) => heading),
      ['Lengths'],
    );
    assert.match(after.join('\n'), /^bust can't be told: it needs a balance line bust-line across/m);
  });

  it('round one limb are told of one limb, left and right where they differ', () => {
    const foot = rowNamed(sheetOfSample('finished', 'trousers'), 'foot');
    assert.deepEqual([foot.where, foot.finished], ['edges of front and back', '44.01']);
  });

  it('say of every length whether it is of the whole or of each side', () => {
    const told = (sample: string, name: string) =>
      rowNamed(sheetOfSample('finished', sample), name)['told of'];
    assert.deepEqual(
      ['side', 'yoke-seam', 'underarm', 'centre', 'armhole'].map((name) => told('crew-shirt', name)),
      ['each side', 'whole', 'each side', 'whole', 'each limb'],
    );
    assert.equal(told('princess-bodice', 'lacing'), 'whole');
    assert.equal(told('princess-bodice', 'sides, right'), 'each side');
  });

  it('count a seam whole that goes on beyond the fold', () => {
    const { finished } = rowNamed(sheetOfSample('finished', 'crew-shirt'), 'yoke-seam');
    assert.equal(finished, '43.08');
  });

  it('count such a seam whole of a front and a back that are cut alike, and once of each', () => {
    const joining = (cut: string) => {
      const text = skirtOnYoke(cut);
      const row = rowNamed(sheetOfText('finished', text), 'joining');
      const step = rowsOf(sheetOfText('sewing', text)).find(([, what]) => what === 'sew joining')!;
      return [row.finished, row['told of'], ...step.slice(3, 5)];
    };
    assert.deepEqual(joining('cut 2 on fold'), ['60.00', 'each of 2', '60.00', '2 times']);
    assert.deepEqual(joining('cut 4 on fold'), ['60.00', 'each of 4', '60.00', '4 times']);
    const { finished } = rowNamed(sheetOfText('finished', skirtOnYoke('cut 4 on fold')), 'hem');
    assert.equal(finished, '240.00');
    const side = rowNamed(sheetOfText('finished', skirtOnYoke('cut 2 on fold')), 'side');
    assert.deepEqual([side.finished, side['told of']], ['50.00', 'each side']);
  });
});

describe('a fit sheet', () => {
  it('leads with the body and the day as it is given, and asks only of what the pattern has', () => {
    const dated = (name: string) => sheetOfSample('fit', name).tables[1]!.rows.map(({ cells }) => cells[0]!);
    assert.match(sheetOfSample('fit', 'harbour-skirt').heading, /^ferrywoman: fit sheet of Harbour skirt$/);
    const looks = dated('harbour-skirt').join('\n');
    assert.match(looks, /Darts point to the fullest place/);
    assert.doesNotMatch(looks, /sleeve|armhole|neck/i);
    assert.equal(sheetOfText('fit', bag(), { date: '2026-11-18' }).heading, '2026-11-18: fit sheet of Bag');
  });

  it('has room beside every control measure, and tells what can be let out where', () => {
    const sheet = sheetOfSample('fit', 'laced-bodice');
    assert.deepEqual(rowNamed(sheet, 'side-left.side-front'), {
      '': 'side-left.side-front',
      ...{ allowance: '1.50', inlay: '2.50', 'let out by': '_' },
    });
    assert.equal(rowNamed(sheetOfSample('fit', 'harbour-skirt'), 'hip').toile, '_');
  });
});

/** The steps of a sewing order, each as `what: why`. */
const stepsOf = (name: string): string[] =>
  rowsOf(sheetOfSample('sewing', name)).map((cells) => `${cells[1]}: ${cells.at(-1)}`);

describe('a sewing order', () => {
  it('sews darts first, what another seam crosses before it, and hems last', () => {
    assert.deepEqual(stepsOf('harbour-skirt'), [
      'sew the darts: before any seam takes the edge',
      'sew the darts: before any seam takes the edge',
      'sew centre-back: before waist, which runs on over it',
      'sew side: crossed by waist',
      'sew waist: after side and centre-back',
      'turn up hem: hems last, once the length was tried on',
    ]);
  });

  it('speaks of one dart where a piece has one', () => {
    const steps = stepsOf('waistcoat');
    assert.deepEqual(
      steps.filter((step) => step.startsWith('sew the dart')),
      ['sew the dart: before any seam takes the edge'],
    );
  });

  it('sets a sleeve in flat before its side is closed, and buttons come last', () => {
    const steps = stepsOf('crew-shirt');
    assert.ok(steps.includes('sew armhole: flat, before side and underarm'), steps.join('\n'));
    const at = (what: string) => steps.findIndex((step) => step.startsWith(what));
    assert.ok(at('sew yoke-seam') < at('sew armhole') && at('sew armhole') < at('sew side'));
    assert.ok(at('turn twice hems') < at('sew on the buttons'));
  });

  it('sets a sleeve that is eased in the round, after its own seam', () => {
    const rows = stepsOf('sleeve');
    const [underarm, armhole] = ['sew underarm', 'sew armhole'].map((step) =>
      rows.findIndex((row) => row.startsWith(step)),
    ) as [number, number];
    assert.ok(underarm >= 0 && underarm < armhole, rows.join('\n'));
    assert.match(rows[armhole]!, /in the round, after underarm/);
  });

  it('puts small seams before large ones, and keeps the order of the file where they are alike', () => {
    const square = bag().replace('cut pair in canvas', 'cut pair');
    const seams = ['foot', 'far', 'near'].map((edge) => `seam ${edge}-seam side.${edge} = its pair`);
    const sheet = sheetOfText('sewing', `${square}${seams.join('\n')}\n`);
    assert.deepEqual(
      rowsOf(sheet).map(([, step]) => step),
      ['sew far-seam', 'sew near-seam', 'sew foot-seam'],
    );
  });
});
