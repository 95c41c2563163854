import type { ImportChoices } from '../choices.ts';
import type { Hydrant } from '../hydrant.ts';
import type { ImportField } from '../mapping/fields.ts';
import type { Proposal } from '../mapping/propose.ts';
import type { PlaceDecision } from '../place/decide.ts';
import { coordinateTexts, readPoint, type Point } from '../place/point.ts';
import type { Format } from '../read/format.ts';
import type { SourceRow } from '../read/source.ts';
import { isBlank } from '../values/blank.ts';
import { readPrivate } from '../values/words.ts';
import { lifecycleOf, notFromMain, refusalOf, serviceOf, typeOf, warningsIn, type Say } from './asset.ts';
import { Cells, type Cell } from './cells.ts';
import { fieldReaders, type FieldReaders } from './fieldReaders.ts';
import { remark, type FindingCode, type Findings, type Params, type Remark } from './finding.ts';
import { hashTexts } from './hash.ts';
import { outletsOf } from './outlets.ts';
import { detached } from './values.ts';

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

/** Says something about the row in hand. */
type Add = (found: Remark, field?: ImportField | '', cell?: Cell | null) => void;

/** Checks rows one at a time. Made once per file from its mapping. */
export class RowCheck {
  readonly #findings: Findings;
  readonly #file: string;
  readonly #format: Format;
  readonly #place: PlaceDecision;
  readonly #choices: ImportChoices;
  readonly #cells: Cells;
  readonly #read: FieldReaders;

  constructor(
    proposal: Proposal,
    place: PlaceDecision,
    choices: ImportChoices,
    file: { readonly name: string; readonly format: Format },
    findings: Findings,
  ) {
    this.#findings = findings;
    this.#file = file.name.slice(0, 200);
    this.#format = file.format;
    this.#place = place;
    this.#choices = choices;
    this.#cells = new Cells(proposal);
    this.#read = fieldReaders(this.#cells, choices);
  }

  /** The draft of a row, or null when it was rejected; its findings are on record either way. */
  check(row: SourceRow, index: number, names: readonly string[]): Draft | null {
    const cells = this.#cells;
    cells.learn(names);
    const add: Add = (found, field = '', cell = null) =>
      this.#findings.add(index, row, found, field, cell?.column ?? null, cell?.text ?? null);
    // A reader's own word on a record is one of the findings.
    if (row.fault) add(row.fault as Remark);
    if (row.fault) return null;
    if (row.doubt) add(row.doubt as Remark);

    const marks = cells.of(row, 'deleted');
    const types = cells.of(row, 'type');
    const lifecycle = lifecycleOf(cells.lifecycle.map((column) => cells.cell(row, column)));
    const refusal =
      refusalOf(cells.of(row, 'assetKind'), marks, types) ?? (lifecycle ? null : this.#notTagged(row, names));
    if (refusal) {
      add(refusal.found, 'assetKind', refusal.cell);
      return null;
    }
    const point = this.#readPlace(row, add);
    if (!point) return null;
    const service = serviceOf(cells.of(row, 'service'), marks, lifecycle, this.#sayOf('service', add));
    if (typeof service === 'object') {
      add(remark('inventory-deleted-asset', { value: service.deleted.text }), 'service', service.deleted);
      return null;
    }
    const hydrant = this.#hydrant(row, point, typeOf(types, this.#sayOf('type', add)), service, add);
    this.#warn(row, hydrant, add);
    const key = cells.stableKeyOf(row);
    return {
      index,
      line: row.line,
      featureId: row.featureId ?? (isBlank(key) ? null : detached(key)),
      hydrant,
      hash: hashTexts(row.values, cells.recordKeys),
    };
  }

  #hydrant(
    row: SourceRow,
    point: Point,
    type: Hydrant['type'],
    service: Hydrant['service'],
    add: Add,
  ): Hydrant {
    const read = this.#read;
    return {
      // `?` and `N/A` are kept: that somebody wrote them is worth saying, unlike an empty cell.
      hydrantId: detached(this.#cells.of(row, 'hydrantId')[0]?.text ?? ''),
      latitudeDeg: point.latitudeDeg,
      longitudeDeg: point.longitudeDeg,
      place: read.place(row, add),
      type,
      service,
      modelId: read.modelId(row, add),
      installedOn: read.installedOn(row, add),
      ...this.#readOutlets(row, add),
      mainSizeIn: read.mainSizeIn(row, add),
      lateralSizeIn: read.lateralSizeIn(row, add),
      lateralLengthFt: read.lateralLengthFt(row, add),
      buryDepthFt: read.buryDepthFt(row, add),
      isolationValveId: read.isolationValveId(row, add),
      owner: read.owner(row, add),
      private: this.#readPrivate(row, add),
      lastInspectedOn: read.lastInspectedOn(row, add),
      ratedFlowGpm: read.ratedFlowGpm(row, add),
      source: { file: this.#file, row: row.row },
    };
  }

  #sayOf(field: ImportField, add: Add): Say {
    return (found, cell) => add(found, field, cell);
  }

  /** In an OSM file only the tag makes a node a hydrant. */
  #notTagged(row: SourceRow, names: readonly string[]): { found: Remark; cell: Cell } | null {
    if (this.#format !== 'osm' || this.#cells.cell(row, 'emergency').text === 'fire_hydrant') return null;
    const first = row.values.findIndex((value) => value !== undefined && value !== '');
    const cell = { column: names[first] ?? '', text: row.values[first] ?? '' };
    return { found: remark('inventory-not-a-hydrant', { value: `${cell.column}=${cell.text}` }), cell };
  }

  /** Remarks, and remarks that stand in the wrong column, can say that a hydrant is none to rely on. */
  #warn(row: SourceRow, { hydrantId, owner, place }: Hydrant, add: Add): void {
    const texts = this.#cells.of(row, 'remarks');
    const elsewhere = { hydrantId, owner, place };
    for (const [field, text] of Object.entries(elsewhere)) {
      const column = this.#cells.columnsOf(field as keyof typeof elsewhere)[0];
      if (text && column !== undefined) texts.push({ column, text });
    }
    warningsIn(texts, this.#sayOf('remarks', add));
    notFromMain(this.#cells.of(row, 'waterSource'), this.#sayOf('waterSource', add));
  }

  #readPlace(row: SourceRow, add: Add): Point | null {
    const { from } = this.#place;
    const texts =
      from === 'points' && row.point
        ? row.point
        : coordinateTexts(row, {
            x: this.#cells.placeOf('longitudeDeg'),
            y: this.#cells.placeOf('latitudeDeg'),
            point: from === 'one-column' ? this.#cells.placeOf('point') : -1,
          });
    const reading = readPoint(this.#place, texts);
    const columns = (['point', 'longitudeDeg', 'latitudeDeg'] as const).flatMap((field) =>
      this.#cells.columnsOf(field),
    );
    const cell = texts && {
      column: columns.join(', ') || 'coordinates',
      text: `${texts.x}, ${texts.y}`,
    };
    if (reading.point) {
      if (from === 'points' && row.point?.asText) add(remark('inventory-coordinates-as-text'), '', cell);
      return reading.point;
    }
    if (reading.swapped && this.#choices.accept.has('swapped-axes')) {
      add(remark('inventory-swapped-axes-taken', reading.remark.params), '', cell);
      return reading.swapped;
    }
    add(reading.remark, '', cell);
    return null;
  }

  #readOutlets(row: SourceRow, add: Add): Pick<Hydrant, 'outlets' | 'outletCount'> {
    const read = this.#read;
    const cell = this.#cells.of(row, 'outlets').find(({ text }) => !isBlank(text));
    return outletsOf(
      {
        outlets: cell?.text ?? '',
        count: read.outletCount(row, add),
        hose: { count: read.hoseOutletCount(row, add), diameterIn: read.hoseOutletDiameterIn(row, add) },
        pumper: {
          count: read.pumperOutletCount(row, add),
          diameterIn: read.pumperOutletDiameterIn(row, add),
        },
      },
      (found, field) => add(found, field, cell ?? this.#cells.of(row, field)[0] ?? null),
    );
  }

  #readPrivate(row: SourceRow, add: Add): boolean | null {
    const cell = this.#cells.of(row, 'private')[0];
    if (!cell || isBlank(cell.text)) return null;
    const value = readPrivate(cell.text);
    if (value === null) add(remark('inventory-unknown-word'), 'private', cell);
    return value;
  }
}
