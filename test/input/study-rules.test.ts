import { describe, expect, it } from 'vitest';
import { edited, type Files, goodFiles, historyOf, issuesIn, studyIn, withFile } from './good-study.js';

const degrees = (value: number) => (value * Math.PI) / 180;

describe('rules that look at more than one cell', () => {
  const withItems = (...rows: string[]): Files =>
    withFile('study.csv', `${goodFiles['study.csv']}${rows.join('\n')}\n`);

  it('warm a buried drive on a body and blow at a worn panel', () => {
    const buried = studyIn(withItems('air.buried,yes,,', 'feature.panel_area,0.1 m²,,'));
    expect(buried.air).toEqual({ gustMPerS: 6, temperatureK: 308.15, buried: true });
    const standing = studyIn(edited('study.csv', 'worn,yes', 'worn,no', withItems('air.buried,yes,,')));
    expect(standing.air.temperatureK).toBe(298.15);
    expect(standing.carrier.activity).toBe('stand');
  });

  it('take a strut drive to be as long as its envelope where nobody measured it drawn in', () => {
    const listed = goodFiles['candidates.csv'] as string;
    const withLength = (length: string, closed: string) =>
      studyIn({
        ...goodFiles,
        'candidates.csv': listed
          .replace(/mass\n/, 'mass,length,closed_length\n')
          .replace(/290 g/, `290 g,${length},${closed}`),
      });
    const path = 'candidates.screw-a.sheet.closedLengthM';
    expect(historyOf(withLength('205 mm', ''), path)).toMatchObject({ origin: 'assumed', shown: '205 mm' });
    expect(historyOf(withLength('205 mm', '190 mm'), path)).toMatchObject({
      origin: 'given',
      shown: '190 mm',
    });
    expect(withLength('', '').candidates[2]!.sheet.closedLengthM).toBeNull();
  });

  it('take the balance distance from a scale under the tip', () => {
    const scaled = studyIn(edited('study.csv', '200 mm', '', withItems('feature.tip_scale,220 g,,')));
    expect(scaled.feature.balanceDistanceM).toBeCloseTo((0.22 * 0.5) / 0.5, 12);
    expect(historyOf(scaled, 'feature.balanceDistanceM').origin).toBe('derived');
  });

  it('know the three forms of an assist spring', () => {
    expect(studyIn(withItems('spring.constant,0.5 N·m,,')).feature.spring).toMatchObject({
      form: 'constant',
      constantEffort: 0.5,
    });
    expect(
      studyIn(withItems('spring.stiffness,0.4 N·m/rad,,', 'spring.free_angle,60 deg,,')).feature.spring,
    ).toMatchObject({
      form: 'linear',
      stiffness: 0.4,
      freePosition: degrees(60),
    });
    const coil = withItems(
      'spring.rate,0.2 N/mm,,',
      'spring.frame_arm,80 mm,,',
      'spring.feature_arm,60 mm,,',
      'spring.free_length,50 mm,,',
    );
    expect(studyIn(coil).feature.spring).toMatchObject({
      form: 'coil',
      rateNPerM: 200,
      frameArmM: 0.08,
      featureArmM: 0.06,
      freeLengthM: 0.05,
    });
  });

  it('read a slide in millimetres and newtons', () => {
    const slide = studyIn({
      ...goodFiles,
      'study.csv': `item,value,unit,note
question,?,,
project,Lift,,
feature.kind,slide,,
feature.mass,2 kg,,
feature.lower_stop,0,,
feature.upper_stop,250,,
feature.incline,60 deg,,
feature.friction,3 N,,
pack.choice,pack-a,,
`,
      'candidates.csv': `id,type,rated_voltage,no_load_speed,stall_torque,stall_force,stall_current,stroke,mass,spool_radius
winch,worm-gearmotor,12 V,30 rpm,20 kg·cm,,2 A,,200 g,12 mm
rod,screw-actuator,12 V,20 mm/s,,200 N,1.8 A,300 mm,290 g,
`,
      'show.csv': 'cue,action,to,seconds\nup,move,200,20\nstay,hold,,9\ndown,move,0 mm,20\nlie,rest,,5\n',
    });
    expect(slide.feature).toMatchObject({
      kind: 'slide',
      upperStopPosition: 0.25,
      frictionEffort: 3,
      tipDistanceM: 0,
      balanceDistanceM: 0,
    });
    expect(slide.feature.inclineRad).toBeCloseTo(degrees(60), 12);
    expect(slide.show.loop.map(({ fromPosition, toPosition }) => [fromPosition, toPosition])).toEqual([
      [0, 0.2],
      [0.2, 0.2],
      [0.2, 0],
      [0, 0],
    ]);
    expect(slide.candidates.map(({ sheet }) => [sheet.coupling, sheet.couplingEfficiency])).toEqual([
      ['spool', 0.95],
      ['direct', 1],
    ]);
    expect(slide.baselineId).toBeNull();
  });

  it('lose nothing in a coupling that has no loss, whatever the row says of one', () => {
    const given = withFile(
      'candidates.csv',
      'id,type,rated_voltage,no_load_speed,stall_torque,stall_current,mass,coupling_efficiency\n' +
        'servo-a,position-servo,7.4 V,0.2 s/60deg,35 kg·cm,4 A,80 g,0.5\n',
    );
    const read = studyIn(given);
    expect(read.candidates[0]!.sheet).toMatchObject({ coupling: 'direct', couplingEfficiency: 1 });
    expect(read.provenance.some(({ path }) => path.endsWith('servo-a.sheet.couplingEfficiency'))).toBe(false);
  });

  it('read a drive at two voltages as one candidate', () => {
    const two = studyIn(
      edited(
        'candidates.csv',
        'worm-a,',
        'servo-a,position-servo,6 V,0.24 s/60deg,28 kg·cm,,3.4 A,,\nworm-a,',
      ),
    );
    expect(two.candidates).toHaveLength(3);
    const [other] = two.candidates[0]!.sheet.otherVoltages;
    expect(other).toMatchObject({ ratedVoltageV: 6, stallCurrentA: 3.4, noLoadCurrentA: null });
    expect(
      two.provenance.some(({ path }) => path === 'candidates.servo-a.sheet.otherVoltages.0.stallEffort'),
    ).toBe(true);
  });

  it('collect candidates from several files', () => {
    const more = withFile(
      'candidates-found.csv',
      'id,type,rated_voltage,no_load_speed,stall_torque\nnew,worm-gearmotor,12 V,10 rpm,80 kg·cm\n',
    );
    expect(
      studyIn(more)
        .candidates.map(({ id, file }) => [id, file])
        .at(-1),
    ).toEqual(['new', 'candidates-found.csv']);
  });

  it('take the usual figures of a thread only when its geometry is known', () => {
    const worm = (lead: string) =>
      studyIn(
        withFile(
          'candidates.csv',
          `id,type,rated_voltage,no_load_speed,stall_torque,lead_angle\nservo-a,worm-gearmotor,12 V,15 rpm,60 kg·cm,${lead}\n`,
        ),
      ).candidates[0]!.sheet;
    expect(worm('4 deg')).toMatchObject({
      frictionRunningCoefficient: 0.06,
      frictionStaticCoefficient: 0.1,
      pressureAngleRad: degrees(20),
    });
    expect(worm('')).toMatchObject({ frictionRunningCoefficient: null, pressureAngleRad: null });
  });

  it('keep columns of the user and print them, unread', () => {
    const own = studyIn(
      edited(
        'candidates.csv',
        'stroke,mass',
        'stroke,my_shop',
        edited('candidates.csv', '80 g', '=1+1 "quoted'.replaceAll('"', '')),
      ),
    );
    expect(own.candidates[0]!.extra).toEqual({ my_shop: '=1+1 quoted' });
  });
});

describe('units and marks of a whole file', () => {
  it('come from the header, and the cell wins', () => {
    const headed = studyIn(
      edited(
        'candidates.csv',
        'stall_torque',
        'stall_torque [N·m]',
        edited('candidates.csv', '35 kg·cm', '3.4'),
      ),
    );
    expect(headed.candidates[0]!.sheet.stallEffort).toBe(3.4);
    expect(headed.candidates[1]!.sheet.stallEffort).toBeCloseTo(60 * 0.0980665, 12);
    expect(historyOf(headed, 'candidates.servo-a.sheet.stallEffort').written).toBe('3.4 N·m');
  });

  it('come from the unit column of study.csv, and the cell wins', () => {
    const united = studyIn(
      edited('study.csv', '500 g,,', '500,g,', edited('study.csv', '200 mm,,', '20 cm,mm,')),
    );
    expect(united.feature).toMatchObject({ massKg: 0.5, balanceDistanceM: 0.2 });
  });

  it('may be semicolons with decimal commas, tabs, or carriage returns', () => {
    const semicolons = (goodFiles['packs.csv'] as string).replaceAll(',', ';').replace('2200 mAh', '2,2 Ah');
    expect(studyIn(withFile('packs.csv', semicolons)).pack.capacityC).toBeCloseTo(7920, 8);
    const tabs = (goodFiles['packs.csv'] as string).replaceAll(',', '\t');
    expect(studyIn(withFile('packs.csv', tabs)).pack.capacityC).toBe(7920);
    const windows = (goodFiles['packs.csv'] as string).replaceAll('\n', '\r\n');
    expect(studyIn(withFile('packs.csv', windows)).pack.capacityC).toBe(7920);
  });
});

describe('one run tells every mistake', () => {
  it('of a drive whose type could not be read', () => {
    const issues = issuesIn({
      ...goodFiles,
      'candidates.csv': `id,type,rated_voltage,no_load_speed,stall_torque,stall_current,length,mass
a,servo 35 kg,,0.2 s/60deg,35kg,4 A,40,80 g
b,wrm,12 V,20 mm/s,,2 A,40 mm,290 g
`,
    });
    const told = issues.map(({ line, column, code }) => `${line} ${column} ${code}`);
    expect(told).toContain('2 rated_voltage blank-required');
    expect(told).toContain('2 stall_torque unit-of-another-dimension');
    expect(told).toContain('2 length missing-unit');
    // A linear drive would read 20 mm/s.
    expect(told.filter((text) => text.startsWith('3'))).toEqual(['3 type unknown-choice']);
  });

  it('of a cue beyond the one stop that is given', () => {
    const files = edited(
      'study.csv',
      'feature.upper_stop,60,,\n',
      '',
      edited('show.csv', 'move,-30', 'move,-50'),
    );
    expect(issuesIn(files).filter(({ code }) => code === 'beyond-stop')).toMatchObject([
      { line: 4, column: 'to', expected: expect.stringContaining('-30 deg or more') },
    ]);
  });
});

describe('a load without a converter', () => {
  const shown = (cells: string) =>
    studyIn(
      withFile('loads.csv', `id,power,voltage,converter_efficiency\ncontroller,0.5 W,${cells}\n`),
    ).provenance.find(({ path }) => path === 'loads.controller.converterEfficiency');

  it('is said to be taken behind a linear regulator', () => {
    expect(shown('5 V,')).toMatchObject({
      origin: 'assumed',
      shown: 'linear regulator',
      owner: 'controller',
    });
    expect(shown('5 V,80 %')).toMatchObject({ origin: 'given' });
  });
});

describe('a number without its unit', () => {
  it('is told that the unit may stand in the head of its column', () => {
    const bare = edited('candidates.csv', '80 g', '80');
    expect(issuesIn(bare)[0]!.hint).toBe(
      'did you mean 80 g, 80 kg or 80 oz? Or put the unit of all rows into the column head: mass [g]',
    );
  });

  it('is told of the unit column where there is one', () => {
    const bare = edited('study.csv', '500 g', '500');
    expect(issuesIn(bare)[0]!.hint).toContain('Or write the unit into the column “unit”');
  });

  it('is told of no brackets where its unit stands in a column of its own', () => {
    const files = edited('study.csv', '500 g,,', '500,mm,');
    expect(issuesIn(files)[0]!.hint).toMatch(/in the unit column$/);
  });
});
