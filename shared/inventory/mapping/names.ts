import { compact } from '../values/blank.ts';
import type { ImportField } from './fields.ts';

/** Names set apart by spaces, so that a list of forty reads as one. */
const words = (text: string): readonly string[] => text.split(/\s+/).filter(Boolean);

/**
 * Column names that mean a field, most trusted first, in the form of `compact()`: English, Spanish, and the tags of
 * OpenStreetMap (wiki page Tag:emergency=fire_hydrant), which are an open standard.
 */
export const columnNames: Readonly<Record<ImportField, readonly string[]>> = {
  hydrantId: words(`
    hydrantid hydrantno hydrantnumber hydrantnum hydrantnbr hydrantcode hydrant hydid hydno hydnum fhid
    fhno facilityid facilityi assetid assetno assetnumber assettag unitid ref tagnumber tagno tag
    numhidrante idhidrante nohidrante codigo numero id number no num`),
  latitudeDeg: words(`
    latitude lat latitud latdd latitudedeg gpslat latwgs84 y ycoord coordy pointy ycoordinate northing
    north posy`),
  longitudeDeg: words(`
    longitude lon long lng longitud londd longdd longitudedeg gpslon gpslong lonwgs84 x xcoord coordx
    pointx xcoordinate easting east posx`),
  // Both coordinates in one column: `POINT (-73.9 40.7)`.
  point: words(`
    point wkt geom geometry thegeom shape geo location`),
  place: words(`
    place fulladdress address siteaddress locationaddress nearestaddress locationdescription locdesc
    location direccion ubicacion street streetname stname onstreet road calle addrstreet addrfull name`),
  type: words(`
    hydranttype hydtype pillartype firehydrantpillar firehydranttype barreltype barrel style type tipo
    tipohidrante hydrantstyle kind`),
  service: words(`
    servicestatus assetstatus lifecyclestatus lifecycle operationalstatus opstatus status hydrantstatus
    inservice activeflag active estado estatus`),
  modelId: words(`
    modelid hydrantmodel model modelno modelnumber modelo`),
  installedOn: words(`
    installedon installdate dateinstalled installationdate installed datinstall instdate instaldate
    insdate yearinstalled installyear installyr yrinstalled instyear fechainstalacion anoinstalacion
    startdate`),
  lastInspectedOn: words(`
    lastinspectedon lastinspection lastinspectiondate lastinspected lastinspdate lastinsp inspectiondate
    dateinspected inspected inspdate fechainspeccion ultimainspeccion surveydateinspection`),
  outlets: words(`
    outlets nozzles outletsizes nozzlesizes outletconfiguration nozzleconfiguration firehydrantcouplings
    bocas`),
  outletCount: words(`
    outletcount numberofoutlets numberofnozzles numberofports numoutlets nooutlets nozzlecount
    numnozzles nonozzles couplings ports numports numerodebocas numbocas`),
  hoseOutletCount: words(`
    hoseoutletcount numhose numhosenozzles hosenozzlecount hosecount numberofhosenozzles hoseoutlets`),
  hoseOutletDiameterIn: words(`
    hoseoutletdiameterin hosesize hosenozzlesize hosediameter hoseoutletsize hosenozzle`),
  pumperOutletCount: words(`
    pumperoutletcount numpumper numsteamer pumpercount steamercount numberofpumpernozzles`),
  pumperOutletDiameterIn: words(`
    pumperoutletdiameterin pumpersize pumpernozzlesize steamersize steamernozzlesize pumperdiameter
    steamerdiameter pumpernozzle steamer`),
  mainSizeIn: words(`
    mainsizein mainsize maindiameter maindia maindiam watermainsize watermaindiameter pipesize
    pipediameter pipedia firehydrantdiameter diametrotuberia diametro`),
  lateralSizeIn: words(`
    lateralsizein lateralsize lateraldiameter lateraldia leadsize leaddiameter branchsize branchdiameter
    laterald`),
  lateralLengthFt: words(`
    laterallengthft laterallength leadlength branchlength lateralle`),
  buryDepthFt: words(`
    burydepthft burydepth bury depthofbury burialdepth trenchdepth profundidad`),
  isolationValveId: words(`
    isolationvalveid isolationvalve isovalve isovalveid auxvalve auxvalveid auxiliaryvalve gatevalveid
    valveid valveno valvenumber`),
  owner: words(`
    owner ownedby ownername propietario operator operatedby maintainedby`),
  private: words(`
    private isprivate privatehydrant ownership ownertype publicprivate pubpriv privado owner`),
  ratedFlowGpm: words(`
    ratedflowgpm ratedflow ratedcapacity flowat20psi flow20psi flow20 q20 availableflow
    firehydrantflowcapacity flowcapacity flowgpm gpm capacity testflow flowrate flow fireflow caudal`),
  assetKind: words(`
    assettype assetkind assetclass featuretype featureclass subtype category emergency amenity
    facilitytype objecttype assetgroup class`),
  deleted: words(`
    deleted isdeleted deletedflag removed retired abandoned decommissioned disused`),
  waterSource: words(`
    watersource firehydrantwatersource sourceofwater supply fuentedeagua`),
  remarks: words(`
    remarks remark note notes comment comments description desc fixme observaciones notas descripcion`),
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
