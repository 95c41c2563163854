/**
 * An example to begin with: one invented model with a line of each kind. `npm run models -- --example` prints it, and
 * docs/models-csv.md shows it; a test reads it back.
 */
export const exampleCsv = [
  'model,line,name,type,opens,number,from,to,unit,shape,measured,threads,wrench percent,lock,part number,replaces,what,manual,page',
  'EX-1,model,Example One (5 1/4 in main valve),dry barrel,left,,3,8,ft,,,,,,,,,Example manual,',
  'EX-1,nozzle,hose,,,,2.5,,in,,,,,,,,,,',
  'EX-1,nozzle,hose,,,,2.5,,in,,,,,,,,,,',
  'EX-1,nozzle,pumper,,,,4 1/2,,in,,,,,,,,,,',
  'EX-1,joint,Breakaway flange,,,8,72,,ft-lb,,,lubricated,4,,,,,Example manual,18',
  'EX-1,joint,Weather cover,,,4,,,,,,,,,,,,,',
  'EX-1,nut,Thrust nut,,,,0.125,0.25,,,,,,yes,,,,Example manual,20',
  'EX-1,wrench,Operating nut,,,,1 1/2,,in,pentagon,point to flat,,,,,,,,',
  'EX-1,wrench,Breakaway flange bolts,,,,1 1/16,,in,hex,flat to flat,,,,,,,,',
  'EX-1,lubricant,Stem threads,,,,,,,,,,,,,,Food-grade grease,Example manual,19',
  'EX-1,kit,Breakaway repair kit,,,1,,,,,,,,,EX-1-BK,The parted flange and coupling,,,',
  'EX-1,kit,Nozzle section gasket set,,,2,,,,,,,,,EX-GSK,,,,',
  '',
].join('\r\n');
