import type { Measure, MeasureName } from '../../1-pattern/pieceFacts.ts';
import type { Origin } from './origin.ts';
import type { Reckoning } from './reckoning.ts';

const SAYS: Readonly<Record<MeasureName, string>> = {
  footLength: 'length of the foot', footGirth: 'girth of the foot', heelDiagonal: 'girth over heel and ankle', ankle: 'girth of the ankle', calf: 'girth of the calf',
  legLength: 'length of the leg, edge of the cuff to heel', width: 'width', topWidth: 'width of the far edge', height: 'height', girth: 'girth', endGirth: 'girth of the far end',
  across: 'width across', length: 'length',
};

/** A measurement in words. */
export function measureWords(name: MeasureName): string {
  return SAYS[name];
}

/** What a measurement asks of the finished piece in cm, ease included, in one size; null where that size has none. */
export function wanted(r: Reckoning, measures: readonly Measure[], name: MeasureName): Origin | null {
  const measure = measures.find((one) => one.name === name);
  const cm = measure?.cm[r.size];
  if (!measure || cm === undefined || cm === null) return null;
  const says = SAYS[name];
  const measured = r.given(`${name}.measured`, says, 'cm', cm, 'measured');
  if (measure.easePercent === 0 && measure.easeCm === 0) {
    return r.reckon({ key: `${name}.wanted`, says: `${says}, finished`, unit: 'cm', formula: 'as measured, no ease', inputs: [measured], exact: cm });
  }
  const percent = r.given(`${name}.easePercent`, 'ease', 'share', measure.easePercent / 100, 'given');
  const plus = r.given(`${name}.easeCm`, 'ease', 'cm', measure.easeCm, 'given');
  const exact = cm * (1 + measure.easePercent / 100) + measure.easeCm;
  return r.reckon({ key: `${name}.wanted`, says: `${says}, finished`, unit: 'cm', formula: 'measured × (1 + ease) + ease in cm', inputs: [measured, percent, plus], exact });
}

/** The same, refused where the size has none. */
export function wantedOrRefuse(r: Reckoning, measures: readonly Measure[], name: MeasureName): Origin {
  const found = wanted(r, measures, name);
  if (!found) throw new RangeError(`size ${r.size} has no measurement ${name}`);
  return found;
}
