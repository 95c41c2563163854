import type { ImportChoices } from '../choices.ts';
import type { Hydrant } from '../hydrant.ts';
import { isRecordKey, isStableKey, type ImportField } from '../mapping/fields.ts';
import type { ColumnUse, Proposal } from '../mapping/propose.ts';
import type { PlaceDecision } from '../place/decide.ts';
import { coordinateTexts, readPoint } from '../place/point.ts';
import type { Format } from '../read/format.ts';
import type { SourceRow } from '../read/source.ts';
import { isBlank } from '../values/blank.ts';
import { readPrivate } from '../values/words.ts';
import {
  lifecycleOf,
  notFromMain,
  refusalOf,
  serviceOf,
  typeOf,
  warningsIn,
  type Cell,
  type Say,
} from './asset.ts';
import { remark, type FindingCode, type Findings, type Params, type Remark } from './finding.ts';
import { hashTexts } from './hash.ts';
import { outletsOf } from './outlets.ts';
import {
  countReader,
  dateReader,
  detached,
  quantityReader,
  remembering,
  textReader,
  type Reading,
} from './values.ts';

/** A row that passed on its own; what it is beside the others (id, duplicates, distance) is settled afterwards. */
export interface Draft {
  readonly index: number;
  readonly line: number;
  readonly featureId: string | null;
  /** Its `hydrantId` is the source's own text, '' where it has none, until the ids are settled; its `source.row` is the row. */
  readonly hydrant: Hydrant;
  /** Equal for rows that say the same in every column but those that number the record. */
  readonly hash: number;
}

/** Says something about a draft and the id its source gave it. */
export type SayOfDraft = (draft: Draft, code: FindingCode, params?: Params) => void;

type Read<T> = (row: SourceRow, say: (found: Remark, field: ImportField, cell: Cell) => void) => T | null;

/** Checks rows one at a time. Made once per file from its mapping. */
export class RowCheck {
  readonly #findings: Findings;
  readonly #file: string;
  readonly #format: Format;
  readonly #place: PlaceDecision;
  readonly #choices: ImportChoices;
  readonly #uses: ReadonlyMap<ImportField, ColumnUse>;
  readonly #places = new Map<string, number>();
  #names: readonly string[] = [];
  #skip = new Set<number>();
  #lifecycle: readonly string[] = [];
  #stableKey: string | null = null;

  readonly #text: Record<'place' | 'modelId' | 'isolationValveId' | 'owner', Read<string>>;
  readonly #date: Record<'installedOn' | 'lastInspectedOn', Read<string>>;
  readonly #number: Record<
    | 'mainSizeIn'
    | 'lateralSizeIn'
    | 'lateralLengthFt'
    | 'buryDepthFt'
    | 'ratedFlowGpm'
    | 'hoseOutletDiameterIn'
    | 'pumperOutletDiameterIn',
    Read<number>
  >;
  readonly #count: Record<'outletCount' | 'hoseOutletCount' | 'pumperOutletCount', Read<number>>;

  constructor(
    proposal: Proposal,
    place: PlaceDecision,
    choices: ImportChoices,
    file: string,
    format: Format,
    findings: Findings,
  ) {
    this.#findings = findings;
    this.#file = file.slice(0, 200);
    this.#format = format;
    this.#place = place;
    this.#choices = choices;
    this.#uses = new Map(proposal.uses.map((use) => [use.field, use]));
    const text = (field: ImportField, longest: number) => this.#reader(field, textReader(longest));
    const date = (field: ImportField) =>
      this.#reader(
        field,
        this.#when(field, (use) => dateReader(use, choices)),
      );
    const number = (field: ImportField) =>
      this.#reader(
        field,
        this.#when(field, (use) => quantityReader(use, choices)),
      );
    const count = (field: ImportField) => this.#reader(field, countReader);
    this.#text = {
      place: text('place', 200),
      modelId: text('modelId', 80),
      isolationValveId: text('isolationValveId', 64),
      owner: text('owner', 120),
    };
    this.#date = { installedOn: date('installedOn'), lastInspectedOn: date('lastInspectedOn') };
    this.#number = {
      mainSizeIn: number('mainSizeIn'),
      lateralSizeIn: number('lateralSizeIn'),
      lateralLengthFt: number('lateralLengthFt'),
      buryDepthFt: number('buryDepthFt'),
      ratedFlowGpm: number('ratedFlowGpm'),
      hoseOutletDiameterIn: number('hoseOutletDiameterIn'),
      pumperOutletDiameterIn: number('pumperOutletDiameterIn'),
    };
    this.#count = {
      outletCount: count('outletCount'),
      hoseOutletCount: count('hoseOutletCount'),
      pumperOutletCount: count('pumperOutletCount'),
    };
  }

  /** The draft of a row, or null when it was rejected; its findings are on record either way. */
  check(row: SourceRow, index: number, names: readonly string[]): Draft | null {
    this.#learn(names);
    const add = (found: Remark, field: ImportField | '' = '', cell: Cell | null = null): void =>
      this.#findings.add(index, row, found, field, cell?.column ?? null, cell?.text ?? null);
    const reject = (found: Remark, field: ImportField | '' = '', cell: Cell | null = null): null => {
      add(found, field, cell);
      return null;
    };
    if (row.fault) return reject(row.fault as Remark);
    if (row.doubt) add(row.doubt as Remark);

    const [kinds, marks, types] = [
      this.#cells(row, 'assetKind'),
      this.#cells(row, 'deleted'),
      this.#cells(row, 'type'),
    ];
    const lifecycleTag = lifecycleOf(this.#lifecycle.map((column) => this.#cell(row, column)));
    const refusal = refusalOf(kinds, marks, types);
    if (refusal) return reject(refusal.found, 'assetKind', refusal.cell);
    if (this.#format === 'osm' && !lifecycleTag && this.#cell(row, 'emergency').text !== 'fire_hydrant') {
      const first = row.values.findIndex((value) => value !== undefined && value !== '');
      const cell = { column: names[first] ?? '', text: row.values[first] ?? '' };
      return reject(
        remark('inventory-not-a-hydrant', { value: `${cell.column}=${cell.text}` }),
        'assetKind',
        cell,
      );
    }

    const placed = this.#readPlace(row, add);
    if (!placed) return null;

    const say =
      (field: ImportField): Say =>
      (found, cell) =>
        add(found, field, cell);
    const service = serviceOf(this.#cells(row, 'service'), marks, lifecycleTag, say('service'));
    if (typeof service === 'object')
      return reject(
        remark('inventory-deleted-asset', { value: service.deleted.text }),
        'service',
        service.deleted,
      );

    const sourceIdCell = this.#cells(row, 'hydrantId')[0];
    const owner = this.#text.owner(row, add);
    const place = this.#text.place(row, add);
    const warned = this.#cells(row, 'remarks');
    for (const [field, text] of [
      ['hydrantId', sourceIdCell?.text],
      ['owner', owner],
      ['place', place],
    ] as const) {
      if (text) warned.push({ column: this.#uses.get(field)?.columns[0]?.name ?? field, text });
    }
    warningsIn(warned, say('remarks'));
    notFromMain(this.#cells(row, 'waterSource'), say('waterSource'));

    const hydrant: Hydrant = {
      // `?` and `N/A` are kept: that somebody wrote them is worth saying, unlike an empty cell.
      hydrantId: detached(sourceIdCell?.text ?? ''),
      ...placed,
      place,
      type: typeOf(types, say('type')),
      service,
      modelId: this.#text.modelId(row, add),
      installedOn: this.#date.installedOn(row, add),
      ...this.#readOutlets(row, add),
      mainSizeIn: this.#number.mainSizeIn(row, add),
      lateralSizeIn: this.#number.lateralSizeIn(row, add),
      lateralLengthFt: this.#number.lateralLengthFt(row, add),
      buryDepthFt: this.#number.buryDepthFt(row, add),
      isolationValveId: this.#text.isolationValveId(row, add),
      owner,
      private: this.#readPrivate(row, add),
      lastInspectedOn: this.#date.lastInspectedOn(row, add),
      ratedFlowGpm: this.#number.ratedFlowGpm(row, add),
      source: { file: this.#file, row: row.row },
    };
    const key = this.#stableKey === null ? '' : this.#cell(row, this.#stableKey).text;
    return {
      index,
      line: row.line,
      featureId: row.featureId ?? (isBlank(key) ? null : detached(key)),
      hydrant,
      hash: hashTexts(row.values, this.#skip),
    };
  }

  /** Columns appear as the file goes on; their places are looked up once each. */
  #learn(names: readonly string[]): void {
    if (this.#names.length === names.length) return;
    for (let place = this.#places.size; place < names.length; place += 1) {
      const name = names[place] ?? '';
      this.#places.set(name, place);
      if (isRecordKey(name)) this.#skip.add(place);
      if (
        this.#stableKey === null &&
        isStableKey(name) &&
        this.#uses.get('hydrantId')?.columns[0]?.name !== name
      )
        this.#stableKey = name;
      if (name.endsWith(':emergency')) this.#lifecycle = [...this.#lifecycle, name];
    }
    this.#names = [...names];
  }

  #cell(row: SourceRow, column: string): Cell {
    return { column, text: row.values[this.#places.get(column) ?? -1] ?? '' };
  }

  #cells(row: SourceRow, field: ImportField): Cell[] {
    return (this.#uses.get(field)?.columns ?? []).map(({ name }) => this.#cell(row, name));
  }

  #when<T>(
    field: ImportField,
    make: (use: ColumnUse) => (text: string) => Reading<T>,
  ): (text: string) => Reading<T> {
    const use = this.#uses.get(field);
    return use ? make(use) : () => ({ value: null, remark: null });
  }

  #reader<T>(field: ImportField, read: (text: string) => Reading<T>): Read<T> {
    const columns = this.#uses.get(field)?.columns.map(({ name }) => name) ?? [];
    const [first = ''] = columns;
    if (columns.length === 0) return () => null;
    const remembered = remembering(read);
    return (row, say) => {
      const text =
        columns.length === 1
          ? this.#cell(row, first).text
          : columns
              .map((column) => this.#cell(row, column).text)
              .filter((part) => !isBlank(part))
              .join(' ');
      if (text === '') return null;
      const reading = remembered(text);
      if (reading.remark) say(reading.remark, field, { column: columns.join(' + '), text });
      return reading.value;
    };
  }

  #readPlace(
    row: SourceRow,
    add: (found: Remark, field?: ImportField | '', cell?: Cell | null) => void,
  ): Pick<Hydrant, 'latitudeDeg' | 'longitudeDeg'> | null {
    const placeOf = (field: ImportField): number =>
      this.#places.get(this.#uses.get(field)?.columns[0]?.name ?? '') ?? -1;
    const texts = coordinateTexts(this.#place.from === 'points' ? row : { ...row, point: null }, {
      x: placeOf('longitudeDeg'),
      y: placeOf('latitudeDeg'),
      point: this.#place.from === 'one-column' ? placeOf('point') : -1,
    });
    const reading = readPoint(this.#place, texts);
    const column = ['point', 'longitudeDeg', 'latitudeDeg']
      .flatMap((field) => this.#uses.get(field as ImportField)?.columns.map(({ name }) => name) ?? [])
      .join(', ');
    const cell = texts ? { column: column || 'coordinates', text: `${texts.x}, ${texts.y}` } : null;
    if (reading.point) {
      if (row.point?.asText) add(remark('inventory-coordinates-as-text'), '', cell);
      return reading.point;
    }
    if (reading.swapped && this.#choices.accept.has('swapped-axes')) {
      add(remark('inventory-swapped-axes-taken', reading.remark.params), '', cell);
      return reading.swapped;
    }
    add(reading.remark, '', cell);
    return null;
  }

  #readOutlets(
    row: SourceRow,
    add: (found: Remark, field: ImportField, cell: Cell) => void,
  ): Pick<Hydrant, 'outlets' | 'outletCount'> {
    const cell = this.#cells(row, 'outlets').find(({ text }) => !isBlank(text));
    return outletsOf(
      {
        outlets: cell?.text ?? '',
        count: this.#count.outletCount(row, add),
        hose: {
          count: this.#count.hoseOutletCount(row, add),
          diameterIn: this.#number.hoseOutletDiameterIn(row, add),
        },
        pumper: {
          count: this.#count.pumperOutletCount(row, add),
          diameterIn: this.#number.pumperOutletDiameterIn(row, add),
        },
      },
      (found, field) => add(found, field, cell ?? this.#cells(row, field)[0] ?? { column: field, text: '' }),
    );
  }

  #readPrivate(row: SourceRow, add: (found: Remark, field: ImportField, cell: Cell) => void): boolean | null {
    const cell = this.#cells(row, 'private')[0];
    if (!cell || isBlank(cell.text)) return null;
    const value = readPrivate(cell.text);
    if (value === null) add(remark('inventory-unknown-word'), 'private', cell);
    return value;
  }
}
