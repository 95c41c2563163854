import type { UnitId } from '../../units/units.ts';
import { compact } from '../values/blank.ts';
import type { SourceUnit } from '../values/quantity.ts';

/** What a column of a file may be mapped to. Most are fields of a hydrant; the last group only steers the import. */
export const importFields = [
  'hydrantId',
  'latitudeDeg',
  'longitudeDeg',
  'point',
  'place',
  'type',
  'service',
  'modelId',
  'installedOn',
  'lastInspectedOn',
  'outlets',
  'outletCount',
  'hoseOutletCount',
  'hoseOutletDiameterIn',
  'pumperOutletCount',
  'pumperOutletDiameterIn',
  'mainSizeIn',
  'lateralSizeIn',
  'lateralLengthFt',
  'buryDepthFt',
  'isolationValveId',
  'owner',
  'private',
  'ratedFlowGpm',
  // What the asset is, a mark that it is deleted, free remarks worth reading for a warning, and where its water comes from.
  'assetKind',
  'deleted',
  'remarks',
  'waterSource',
] as const;
export type ImportField = (typeof importFields)[number];
export const isImportField = (name: string): name is ImportField =>
  importFields.includes(name as ImportField);

export type FieldKind =
  | 'id'
  | 'coordinate'
  | 'point'
  | 'text'
  | 'type'
  | 'status'
  | 'private'
  | 'date'
  | 'quantity'
  | 'count'
  | 'outlets'
  | 'kind'
  | 'mark'
  | 'remarks'
  | 'source';

/** How a quantity is read: its unit here, what is plausible, and what a bare number could be. */
export interface QuantityRule {
  readonly target: UnitId;
  /** Plausible values in the target unit (common practice, no single source); others are doubted and left out. */
  readonly minimum: number;
  readonly maximum: number;
  /** The largest usual value in the target unit; a column's middle value is expected below it. */
  readonly usualMaximum: number;
  /** Units a bare number could be in, the usual one first. */
  readonly candidates: readonly SourceUnit[];
  /** Pipe and outlet sizes come in steps, which tells inches from millimetres and from tenths of an inch. */
  readonly inSteps: boolean;
}

export interface FieldRule {
  readonly kind: FieldKind;
  /** Column names that mean this, most trusted first, in the form of `compact()`. */
  readonly names: readonly string[];
  /** Several columns may serve: joined (a house number and a street) or tried in turn. */
  readonly several: 'joined' | 'in-turn' | null;
  readonly quantity?: QuantityRule;
}

const size = (minimum: number, maximum: number, usualMaximum: number): QuantityRule => ({
  target: 'in',
  minimum,
  maximum,
  usualMaximum,
  candidates: ['in', 'mm', 'tenth-in'],
  inSteps: true,
});
const outletSize = size(1, 6, 6);
const lateralLength: QuantityRule = {
  target: 'ft',
  minimum: 0,
  maximum: 2000,
  usualMaximum: 500,
  candidates: ['ft'],
  inSteps: false,
};
const buryDepth: QuantityRule = {
  target: 'ft',
  minimum: 0,
  maximum: 20,
  usualMaximum: 15,
  candidates: ['ft', 'in'],
  inSteps: false,
};
// Below 20 gpm no hydrant is rated: a garden hose gives more than half of that.
const flow: QuantityRule = {
  target: 'gpm',
  minimum: 20,
  maximum: 10_000,
  usualMaximum: 5000,
  candidates: ['gpm'],
  inSteps: false,
};

/** The tags of OpenStreetMap (wiki page Tag:emergency=fire_hydrant) are among the names: they are an open standard. */
export const fieldRules: Readonly<Record<ImportField, FieldRule>> = {
  hydrantId: {
    kind: 'id',
    several: null,
    names: [
      'hydrantid',
      'hydrantno',
      'hydrantnumber',
      'hydrantnum',
      'hydrantnbr',
      'hydrantcode',
      'hydrant',
      'hydid',
      'hydno',
      'hydnum',
      'fhid',
      'fhno',
      'facilityid',
      'facilityi',
      'assetid',
      'assetno',
      'assetnumber',
      'assettag',
      'unitid',
      'ref',
      'tagnumber',
      'tagno',
      'tag',
      'numhidrante',
      'idhidrante',
      'nohidrante',
      'codigo',
      'numero',
      'id',
      'number',
      'no',
      'num',
    ],
  },
  latitudeDeg: {
    kind: 'coordinate',
    several: null,
    names: [
      'latitude',
      'lat',
      'latitud',
      'latdd',
      'latitudedeg',
      'gpslat',
      'latwgs84',
      'y',
      'ycoord',
      'coordy',
      'pointy',
      'ycoordinate',
      'northing',
      'north',
      'posy',
    ],
  },
  longitudeDeg: {
    kind: 'coordinate',
    several: null,
    names: [
      'longitude',
      'lon',
      'long',
      'lng',
      'longitud',
      'londd',
      'longdd',
      'longitudedeg',
      'gpslon',
      'gpslong',
      'lonwgs84',
      'x',
      'xcoord',
      'coordx',
      'pointx',
      'xcoordinate',
      'easting',
      'east',
      'posx',
    ],
  },
  // Both coordinates in one column: `POINT (-73.9 40.7)`.
  point: {
    kind: 'point',
    several: null,
    names: ['point', 'wkt', 'geom', 'geometry', 'thegeom', 'shape', 'geo', 'location'],
  },
  place: {
    kind: 'text',
    several: 'joined',
    names: [
      'place',
      'fulladdress',
      'address',
      'siteaddress',
      'locationaddress',
      'nearestaddress',
      'locationdescription',
      'locdesc',
      'location',
      'direccion',
      'ubicacion',
      'street',
      'streetname',
      'stname',
      'onstreet',
      'road',
      'calle',
      'addrstreet',
      'addrfull',
      'name',
    ],
  },
  type: {
    kind: 'type',
    several: 'in-turn',
    names: [
      'hydranttype',
      'hydtype',
      'pillartype',
      'firehydrantpillar',
      'firehydranttype',
      'barreltype',
      'barrel',
      'style',
      'type',
      'tipo',
      'tipohidrante',
      'hydrantstyle',
      'kind',
    ],
  },
  service: {
    kind: 'status',
    several: 'in-turn',
    names: [
      'servicestatus',
      'assetstatus',
      'lifecyclestatus',
      'lifecycle',
      'operationalstatus',
      'opstatus',
      'status',
      'hydrantstatus',
      'inservice',
      'activeflag',
      'active',
      'estado',
      'estatus',
    ],
  },
  modelId: {
    kind: 'text',
    several: null,
    names: ['modelid', 'hydrantmodel', 'model', 'modelno', 'modelnumber', 'modelo'],
  },
  installedOn: {
    kind: 'date',
    several: null,
    names: [
      'installedon',
      'installdate',
      'dateinstalled',
      'installationdate',
      'installed',
      'datinstall',
      'instdate',
      'instaldate',
      'insdate',
      'yearinstalled',
      'installyear',
      'installyr',
      'yrinstalled',
      'instyear',
      'fechainstalacion',
      'anoinstalacion',
      'startdate',
    ],
  },
  lastInspectedOn: {
    kind: 'date',
    several: null,
    names: [
      'lastinspectedon',
      'lastinspection',
      'lastinspectiondate',
      'lastinspected',
      'lastinspdate',
      'lastinsp',
      'inspectiondate',
      'dateinspected',
      'inspected',
      'inspdate',
      'fechainspeccion',
      'ultimainspeccion',
      'surveydateinspection',
    ],
  },
  outlets: {
    kind: 'outlets',
    several: 'in-turn',
    names: [
      'outlets',
      'nozzles',
      'outletsizes',
      'nozzlesizes',
      'outletconfiguration',
      'nozzleconfiguration',
      'firehydrantcouplings',
      'bocas',
    ],
  },
  outletCount: {
    kind: 'count',
    several: null,
    names: [
      'outletcount',
      'numberofoutlets',
      'numberofnozzles',
      'numberofports',
      'numoutlets',
      'nooutlets',
      'nozzlecount',
      'numnozzles',
      'nonozzles',
      'couplings',
      'ports',
      'numports',
      'numerodebocas',
      'numbocas',
    ],
  },
  hoseOutletCount: {
    kind: 'count',
    several: null,
    names: [
      'hoseoutletcount',
      'numhose',
      'numhosenozzles',
      'hosenozzlecount',
      'hosecount',
      'numberofhosenozzles',
      'hoseoutlets',
    ],
  },
  hoseOutletDiameterIn: {
    kind: 'quantity',
    several: null,
    quantity: outletSize,
    names: [
      'hoseoutletdiameterin',
      'hosesize',
      'hosenozzlesize',
      'hosediameter',
      'hoseoutletsize',
      'hosenozzle',
    ],
  },
  pumperOutletCount: {
    kind: 'count',
    several: null,
    names: [
      'pumperoutletcount',
      'numpumper',
      'numsteamer',
      'pumpercount',
      'steamercount',
      'numberofpumpernozzles',
    ],
  },
  pumperOutletDiameterIn: {
    kind: 'quantity',
    several: null,
    quantity: outletSize,
    names: [
      'pumperoutletdiameterin',
      'pumpersize',
      'pumpernozzlesize',
      'steamersize',
      'steamernozzlesize',
      'pumperdiameter',
      'steamerdiameter',
      'pumpernozzle',
      'steamer',
    ],
  },
  mainSizeIn: {
    kind: 'quantity',
    several: null,
    quantity: size(1, 48, 24),
    names: [
      'mainsizein',
      'mainsize',
      'maindiameter',
      'maindia',
      'maindiam',
      'watermainsize',
      'watermaindiameter',
      'pipesize',
      'pipediameter',
      'pipedia',
      'firehydrantdiameter',
      'diametrotuberia',
      'diametro',
    ],
  },
  lateralSizeIn: {
    kind: 'quantity',
    several: null,
    quantity: size(1, 24, 12),
    names: [
      'lateralsizein',
      'lateralsize',
      'lateraldiameter',
      'lateraldia',
      'leadsize',
      'leaddiameter',
      'branchsize',
      'branchdiameter',
      'laterald',
    ],
  },
  lateralLengthFt: {
    kind: 'quantity',
    several: null,
    quantity: lateralLength,
    names: ['laterallengthft', 'laterallength', 'leadlength', 'branchlength', 'lateralle'],
  },
  buryDepthFt: {
    kind: 'quantity',
    several: null,
    quantity: buryDepth,
    names: ['burydepthft', 'burydepth', 'bury', 'depthofbury', 'burialdepth', 'trenchdepth', 'profundidad'],
  },
  isolationValveId: {
    kind: 'text',
    several: null,
    names: [
      'isolationvalveid',
      'isolationvalve',
      'isovalve',
      'isovalveid',
      'auxvalve',
      'auxvalveid',
      'auxiliaryvalve',
      'gatevalveid',
      'valveid',
      'valveno',
      'valvenumber',
    ],
  },
  owner: {
    kind: 'text',
    several: null,
    names: ['owner', 'ownedby', 'ownername', 'propietario', 'operator', 'operatedby', 'maintainedby'],
  },
  private: {
    kind: 'private',
    several: null,
    names: [
      'private',
      'isprivate',
      'privatehydrant',
      'ownership',
      'ownertype',
      'publicprivate',
      'pubpriv',
      'privado',
      'owner',
    ],
  },
  ratedFlowGpm: {
    kind: 'quantity',
    several: null,
    quantity: flow,
    names: [
      'ratedflowgpm',
      'ratedflow',
      'ratedcapacity',
      'flowat20psi',
      'flow20psi',
      'flow20',
      'q20',
      'availableflow',
      'firehydrantflowcapacity',
      'flowcapacity',
      'flowgpm',
      'gpm',
      'capacity',
      'testflow',
      'flowrate',
      'flow',
      'fireflow',
      'caudal',
    ],
  },
  assetKind: {
    kind: 'kind',
    several: 'in-turn',
    names: [
      'assettype',
      'assetkind',
      'assetclass',
      'featuretype',
      'featureclass',
      'subtype',
      'category',
      'emergency',
      'amenity',
      'facilitytype',
      'objecttype',
      'assetgroup',
      'class',
    ],
  },
  deleted: {
    kind: 'mark',
    several: 'in-turn',
    names: [
      'deleted',
      'isdeleted',
      'deletedflag',
      'removed',
      'retired',
      'abandoned',
      'decommissioned',
      'disused',
    ],
  },
  waterSource: {
    kind: 'source',
    several: 'in-turn',
    names: ['watersource', 'firehydrantwatersource', 'sourceofwater', 'supply', 'fuentedeagua'],
  },
  remarks: {
    kind: 'remarks',
    several: 'in-turn',
    names: [
      'remarks',
      'remark',
      'note',
      'notes',
      'comment',
      'comments',
      'description',
      'desc',
      'fixme',
      'observaciones',
      'notas',
      'descripcion',
    ],
  },
};

/** Columns that number the record and not the hydrant; two rows that differ in nothing else are one row twice. */
const recordKeys = [
  'objectid',
  'objectid1',
  'fid',
  'gid',
  'oid',
  'globalid',
  'recordid',
  'rowid',
  'ogcfid',
  'osmid',
  'id1',
];
export const isRecordKey = (column: string): boolean =>
  recordKeys.includes(compact(column)) || column === '@id';

/** Record ids that stay the same from one export to the next, unlike a row number. */
export const isStableKey = (column: string): boolean =>
  ['globalid', 'osmid'].includes(compact(column)) || column === '@id';

/** House numbers, to stand before the street. */
export const isHouseNumber = (column: string): boolean =>
  [
    'addrnum',
    'addrno',
    'addressnumber',
    'addrhousenumber',
    'streetnumber',
    'streetno',
    'houseno',
    'housenumber',
    'stnum',
    'stnumber',
    'numerocasa',
  ].includes(compact(column));
export const isStreet = (column: string): boolean =>
  ['street', 'streetname', 'stname', 'onstreet', 'road', 'calle', 'addrstreet'].includes(compact(column));

/** Columns of the hydrant's maker. The inventory keeps no maker (its model does), so they are only looked at. */
export const makerNames = [
  'make',
  'maker',
  'manufacturer',
  'manufactur',
  'manufacture',
  'mfr',
  'mfg',
  'manuf',
  'manufacturername',
  'brand',
  'marca',
  'fabricante',
];
export const isMaker = (column: string): boolean => makerNames.includes(compact(column));

/** Year or date of manufacture: not the day it went into the ground, though often the only date there is. */
export const isMakeYear = (column: string): boolean =>
  /^(yearofma|yearmade|yearmanufactur|yearofmanufactur|mfgyear|mfgdate|mfrdate|mfryear|manufacturedate|manufactureyear|datemanufactur|makeyear|yearmfg|yrmade|yrmfg|anofabricacion|modelyear|castingyear|castyear)/.test(
    compact(column),
  );
