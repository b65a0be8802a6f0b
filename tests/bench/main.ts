/** The bench: times of every phase, whole and after a keystroke, each beside what it may cost. */
import { measureCompare } from './compare';
import { measureFeatures } from './features';
import { baseline } from './figures';
import { measureFloods } from './floods';
import { measureEdits } from './keystrokes';
import { measurePaper } from './paper';
import { measureServer } from './server';
import { measureOpening, measureWhole } from './whole';

const [part = 'whole', argument = ''] = process.argv.slice(2);
const unit = baseline();
const say = (line: string): void => void process.stdout.write(`${line}\n`);

switch (part) {
  case 'edits':
    measureEdits(unit, say, argument);
    break;
  case 'server':
    measureServer(say, argument);
    break;
  case 'opening':
    measureOpening(unit, say, Number(argument));
    break;
  case 'floods':
    measureFloods(say);
    break;
  case 'features':
    measureFeatures(say);
    break;
  case 'paper':
    void measurePaper(say);
    break;
  case 'compare':
    void measureCompare(say);
    break;
  default:
    measureWhole(unit, say);
}
