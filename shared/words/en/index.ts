import { common } from './common.ts';
import { problems } from './problems.ts';
import { forms } from './forms.ts';
import { procedure } from './procedure.ts';
import { desk } from './desk.ts';
import { publicPages } from './public.ts';
import { cover } from './cover.ts';
import { packet } from './packet.ts';
import { inventory } from './inventory.ts';
import { hydraulics } from './hydraulics.ts';
import { stock } from './stock.ts';
import { water } from './water.ts';
import { network } from './network.ts';
import { offline } from './offline.ts';
import { atWork } from './atWork.ts';
import { damage } from './damage.ts';
import { objections } from './objections.ts';
import { costBook } from './costBook.ts';
import { costs } from './costs.ts';
import { letters } from './letters.ts';
import { exhibits } from './exhibits.ts';
import { evidence } from './evidence.ts';
import { claimLife } from './claimLife.ts';
import { clocks } from './clocks.ts';
import { payments } from './payments.ts';
import { claimFigures } from './claimFigures.ts';
import { claimEvents } from './claimEvents.ts';
import { laterLetters } from './laterLetters.ts';
import { map } from './map.ts';
import { wall } from './wall.ts';
import { verify } from './verify.ts';
import { dispatch } from './dispatch.ts';
import { feeds } from './feeds.ts';
import { lists } from './lists.ts';
import { layers } from './layers.ts';
import { stations } from './stations.ts';
import { years } from './years.ts';
import { commands } from './commands.ts';
import { demo } from './demo.ts';
import { deployment } from './deployment.ts';
import { backup } from './backup.ts';

export const en = {
  ...common,
  ...problems,
  ...forms,
  ...procedure,
  ...desk,
  ...publicPages,
  ...cover,
  ...packet,
  ...inventory,
  ...hydraulics,
  ...stock,
  ...water,
  ...network,
  ...offline,
  ...atWork,
  ...damage,
  ...objections,
  ...costBook,
  ...costs,
  ...letters,
  ...exhibits,
  ...evidence,
  ...claimLife,
  ...clocks,
  ...payments,
  ...claimFigures,
  ...claimEvents,
  ...laterLetters,
  ...map,
  ...wall,
  ...verify,
  ...dispatch,
  ...feeds,
  ...lists,
  ...layers,
  ...stations,
  ...years,
  ...commands,
  ...demo,
  ...deployment,
  ...backup,
};
