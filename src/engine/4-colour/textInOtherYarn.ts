import type { Line, Pattern } from '../1-pattern/pattern.ts';
import { readLine } from '../2-construct/readLine.ts';
import type { Instruction, TextRange } from '../notation/instruction.ts';
import { writeRow } from '../notation/writeRow.ts';
import { changesYarnInside, namesYarnFirst, withoutYarns } from './withoutYarns.ts';

/** The main colour and its contrasts as print names them, by the letter that they are read as. */
const PRINTED: Readonly<Record<string, string>> = { M: 'MC', C: 'CC1?', D: 'CC2', E: 'CC3', F: 'CC4', G: 'CC5' };

/**
 * The text of a line with one yarn in the place of another: the letter is changed where a clause names the yarn, all other
 * words stay. A row that changes yarn no more after that is written without its changes. The same text where the line
 * doesn't name the yarn; null where it does in a way that can't be changed letter by letter (the new text is read again
 * to see). `to` has to be a yarn of the pattern.
 */
export function textInOtherYarn(line: Line, pattern: Pattern, letter: string, to: string): string | null {
  if (!pattern.yarns.some((yarn) => yarn.letter === to)) throw new RangeError(`yarn ${to} asked of ${pattern.yarns.map((yarn) => yarn.letter).join(', ')}`);
  if (line.kind === 'note') return line.text;
  const { body, stated } = readLine(line, pattern);
  const places = namedAt(body, letter);
  const text = places.reduceRight((said: string | null, range) => said && inRange(said, range, letter, to), line.text);
  if (text === null) return null;
  const left = { ...pattern, yarns: pattern.yarns.filter((yarn) => yarn.letter !== letter) };
  const now = readLine({ ...line, text }, left);
  if (now.findings.some((each) => each.rule === 'unknownYarn' && each.found === letter) || plain(now.body) !== plain(body, letter, to)) return null;
  if (places.length === 0 || line.kind !== 'row' || !changesYarnInside(now.body) || !namesYarnFirst(now.body) || lettersOf(now.body).size > 1) return text;
  const first = now.body.findIndex((node) => node.kind === 'yarn' || (node.kind === 'joinAt' && node.yarn !== null)) + 1;
  return writeRow([...now.body.slice(0, first), ...withoutYarns(now.body.slice(first))], stated, { terms: pattern.terms });
}

/** Ranges of the clauses that name a yarn, in the order of the text. */
function namedAt(body: readonly Instruction[], letter: string): readonly TextRange[] {
  return body.flatMap((node): readonly TextRange[] => {
    switch (node.kind) {
      case 'yarn':
        return node.letter === letter ? [node.range] : [];
      case 'joinAt':
        return node.yarn === letter ? [node.range] : [];
      case 'fastenOff':
        return [node.range];
      case 'repeat':
      case 'group':
      case 'forSizes':
        return namedAt(node.body, letter);
      default:
        return [];
    }
  });
}

/** A text with the yarn that is named in a range changed; "fasten off" may name none. Null where it is not found. */
function inRange(text: string, [from, end]: TextRange, letter: string, to: string): string | null {
  const clause = text.slice(from, end);
  const names = [...(PRINTED[letter] ? [new RegExp(`\\b${PRINTED[letter]}\\b`, 'i')] : []), new RegExp(`\\b${letter}\\b`), new RegExp(`\\b${letter.toLowerCase()}\\b(?![\\s\\S]*\\b${letter.toLowerCase()}\\b)`)];
  const found = names.map((name) => name.exec(clause)).find((each) => each !== null);
  if (!found) return /\b(?:fasten|cut)\b/i.test(clause) ? text : null;
  const at = from + found.index;
  return text.slice(0, at) + to + text.slice(at + found[0].length);
}

/** A tree without ranges, so that two can be compared; one yarn named as another if asked. */
function plain(body: readonly Instruction[], letter?: string, to?: string): string {
  return JSON.stringify(body, (key, value: unknown) => (key === 'range' ? undefined : (key === 'letter' || key === 'yarn') && value === letter ? to : value));
}

function lettersOf(body: readonly Instruction[]): ReadonlySet<string> {
  return new Set(body.flatMap((node) => (node.kind === 'yarn' ? [node.letter] : node.kind === 'joinAt' && node.yarn !== null ? [node.yarn] : node.kind === 'repeat' || node.kind === 'group' || node.kind === 'forSizes' ? [...lettersOf(node.body)] : [])));
}
