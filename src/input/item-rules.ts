import * as say from '../problem/study-messages.js';
import type { Report } from '../problem/trouble.js';
import type { FieldDeclaration } from '../quantity/field.js';
import type { FeatureKind } from '../study/feature.js';
import type { Assumptions } from './read-assumptions.js';
import { formatSi } from './read-cell.js';
import type { RowReading } from './row-reading.js';

/** What the rules of study.csv work with. */
export interface ItemContext {
  items: RowReading;
  fields: ReadonlyMap<string, FieldDeclaration>;
  assumptions: Assumptions;
  report: Report;
}

/** Stops, latch, balance, scale, shape and assist spring. */
export function applyFeatureRules(kind: FeatureKind, context: ItemContext): void {
  checkStops(context);
  if (kind === 'hinge') checkBalance(context);
  const { items, report } = context;
  if (items.number('feature.inertiaKgM2') !== null && items.text('feature.shape') !== null)
    report(items.provenance.get('feature.shape')!.place!, say.shapeNotUsed(items.text('feature.shape')!));
  chooseSpring(context);
}

function checkStops({ items, fields, report }: ItemContext): void {
  const lower = items.number('feature.lowerStopPosition');
  const upper = items.number('feature.upperStopPosition');
  if (lower === null || upper === null) return;
  const shown = (value: number) => formatSi(value, fields.get('feature.lower_stop')!);
  const placeOf = (property: string) => items.provenance.get(property)!.place!;
  if (!(upper > lower)) {
    report(placeOf('feature.upperStopPosition'), say.stopsReversed(shown(lower), shown(upper)));
    return;
  }
  const latch = items.number('feature.latchPosition');
  if (latch !== null && (latch < lower - 1e-9 || latch > upper + 1e-9))
    report(placeOf('feature.latchPosition'), say.latchOutsideStops(shown(latch), shown(lower), shown(upper)));
}

function checkBalance({ items, fields, report }: ItemContext): void {
  const mass = items.number('feature.massKg');
  const balance = items.number('feature.balanceDistanceM');
  const tip = items.number('feature.tipDistanceM');
  const scale = items.number('feature.tipScaleKg');
  const balanceField = fields.get('feature.balance_distance')!;
  if (scale !== null && balance === null && mass !== null && tip !== null && mass > 0) {
    items.derive(balanceField, (scale * tip) / mass, 'scale reading × tip distance ÷ mass');
    return;
  }
  if (balance === null || tip === null) return;
  const place = items.provenance.get('feature.balanceDistanceM')!.place!;
  if (balance > tip)
    report(place, say.balanceBeyondTip(formatSi(balance, balanceField), formatSi(tip, balanceField)));
  if (scale === null || mass === null) return;
  const implied = (mass * balance) / tip;
  if (Math.abs(implied - scale) > 0.15 * Math.max(implied, scale)) {
    const field = fields.get('feature.tip_scale')!;
    const scalePlace = items.provenance.get('feature.tipScaleKg')!.place!;
    report(scalePlace, say.scaleDisagrees(formatSi(scale, field), formatSi(implied, field)));
  }
}

const springForms = {
  linear: ['spring.stiffness', 'spring.free_angle'],
  constant: ['spring.constant'],
  coil: ['spring.rate', 'spring.frame_arm', 'spring.feature_arm', 'spring.free_length'],
} as const;

/** Finds the one form of spring that is given, complete; reports mixtures and gaps. */
function chooseSpring({ items, fields, report }: ItemContext): void {
  const isGiven = (name: string) => {
    const field = fields.get(name);
    return field !== undefined && (items.values.get(field.property) ?? null) !== null;
  };
  const forms = Object.entries(springForms).filter(([, names]) => names.some(isGiven));
  items.values.set('feature.spring.form', forms[0]?.[0] ?? 'none');
  if (forms.length === 0) return;
  const given = forms.map(([, names]) => names.find(isGiven)!);
  const place = items.provenance.get(fields.get(given[0]!)!.property)!.place!;
  if (forms.length > 1) {
    report(place, say.springsMixed(given));
    return;
  }
  const missing = forms[0]![1].filter(
    (name) => !isGiven(name) && !items.failed.has(fields.get(name)!.property),
  );
  if (missing.length > 0) report(place, say.springIncomplete(given[0]!, missing));
}

/** Activity, gust and air temperature, which depend on how the feature is carried. */
export function applySurroundingsRules({ items, fields, assumptions }: ItemContext): void {
  const worn = items.values.get('carrier.worn') === true;
  const buried = items.values.get('air.buried') === true;
  const panel = (items.number('feature.panelAreaM2') ?? 0) > 0;
  const take = (item: string, rule: string) =>
    items.assume(fields.get(item)!, assumptions.of('study', 'any', `${item}_${rule}`));
  take('carrier.activity', worn ? 'worn' : 'standing');
  take('air.gust', worn && panel ? 'on_worn_panel' : 'otherwise');
  take('air.temperature', worn && buried ? 'worn_and_buried' : 'otherwise');
}

/** A trip delay needs a trip current. */
export function applyWiringRules({ items, report }: ItemContext): void {
  const delay = items.provenance.get('wiring.protectionDelayS');
  if (delay !== undefined && items.isBlank('wiring.protectionTripA'))
    report(delay.place!, say.partWithoutWhole('protection.delay', 'protection.trip'));
}
