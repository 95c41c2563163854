import type { Hydrant } from '../hydrant.ts';
import { folded } from './blank.ts';

type Patterns<T extends string> = readonly (readonly [RegExp, T])[];

/** The first pattern that matches. Answers are remembered, because a file repeats the same words on every row; bounded. */
function firstMatch<T extends string>(patterns: Patterns<T>): (text: string) => T | null {
  const known = new Map<string, T | null>();
  return (text) => {
    let found = known.get(text);
    if (found === undefined) {
      const words = folded(text);
      found = patterns.find(([pattern]) => pattern.test(words))?.[1] ?? null;
      if (known.size < 5000) known.set(text, found);
    }
    return found;
  };
}

/** `above-ground` is a hydrant of either barrel: the word (pillar, post) does not say which. */
export type TypeWord = Hydrant['type'] | 'above-ground' | 'not-a-hydrant';

// English, Spanish and the German words of OpenStreetMap and European files. The order matters: "dry barrel" before
// "barrel", and what is not a hydrant before what might be one.
const typePatterns: Patterns<TypeWord> = [
  [/\b(dry ?barrel|dry ?bbl|barril seco|columna seca|dry)\b|^db$/, 'dry-barrel'],
  [/\b(wet ?barrel|wet ?bbl|barril humedo|columna humeda|wet)\b|^wb$/, 'wet-barrel'],
  [
    /\b(fdc|fire department connection|sprinklers?|manhole|water meter|meter|air (release|valve)|curb stop|backflow|sampl(e|ing) station|(gate|butterfly|isolation|control|shut ?off|water|system) valve|valves?|valvula|tank|pump|well)\b/,
    'not-a-hydrant',
  ],
  [
    /\b(blow ?offs?|flush(ing)? (station|point|valve|device)|auto ?flusher|yard hydrant|post hydrant yard|purga|desague)\b/,
    'not-a-hydrant',
  ],
  [/\b(underground|unterflur|subterraneo|enterrado|arqueta|flush|below ?ground)\b/, 'underground'],
  [/\b(wall|pared|mural)\b/, 'wall'],
  [/\b(stand ?pipe|pipe|boca de incendio)\b/, 'standpipe'],
  [
    /\b(pillar|post|uberflur|ueberflur|above ?ground|columna|fire hydrant|hydrants?|hyd|fh|hidrante)\b/,
    'above-ground',
  ],
];

/** What kind of hydrant a word means, or that it means something else; null when the word is not known. */
export const readType = firstMatch(typePatterns);

/** The states a source's word can mean; `out` and `deleted` are not states of the inventory but decide what happens. */
export type StatusWord = 'active' | 'out' | 'abandoned' | 'deleted' | 'planned';

const statusPatterns: Patterns<StatusWord> = [
  [
    /\b(deleted?|removed|demolished|razed|does not exist|no longer exists|retired|decommissioned|scrapped|eliminad[oa]|retirad[oa])\b/,
    'deleted',
  ],
  [/\b(abandon(ed)?|aip|disused|dead|abandonad[oa])\b/, 'abandoned'],
  [
    /\b(planned|proposed|design|future|under construction|not (yet )?installed|planead[oa]|proyectad[oa]|propuest[oa])\b/,
    'planned',
  ],
  [
    /\b(out of (service|order)|oos|o s|not in (service|use)|inactive|inoperable|broken|non ?operational|fuera de servicio|inactiv[oa])\b|^(no|n|false|0|f)$/,
    'out',
  ],
  [
    /\b(active|act|in (service|use)|installed|existing|operational|operating|operable|live|current|normal|yes|en servicio|activ[oa])\b|^(y|true|1|t|is|si)$/,
    'active',
  ],
];

export const readStatus = firstMatch(statusPatterns);

const privatePatterns: Patterns<'private' | 'public'> = [
  [/\b(private|privately|priv|privad[oa]|customer|developer|hoa)\b|^(y|yes|true|1|t|si)$/, 'private'],
  [
    /\b(public|pub|public[oa]|city|town|county|municipal|utility|district|village)\b|^(n|no|false|0|f)$/,
    'public',
  ],
];

const readOwnership = firstMatch(privatePatterns);
/** Whether a word says that the hydrant is not the utility's own; null when it does not say. */
export const readPrivate = (text: string): boolean | null => {
  const found = readOwnership(text);
  return found === null ? null : found === 'private';
};

/** True, false or null for a mark in a yes-or-no column (`Y`, `0`, `true`). */
export const readYesNo = (text: string): boolean | null => {
  const word = folded(text);
  if (/^(y|yes|true|1|t|x|si)$/.test(word)) return true;
  return /^(n|no|false|0|f)$/.test(word) ? false : null;
};

const remarkPatterns: Patterns<'blow-off' | 'not-for-fire' | 'gone' | 'place-uncertain'> = [
  [/\bblow ?offs?\b/, 'blow-off'],
  [/\b(not for fire|nicht fur die feuerwehr|do not use|not for firefighting|no usar)\b/, 'not-for-fire'],
  [
    /^(check )?(position|location)$|\b((position|location|place) (is |may be )?(approx\w*|uncertain|estimated|unknown|ungenau)|approx\w* (position|location)|check (position|location)|grob geschatzt|ubicacion aproximada)\b/,
    'place-uncertain',
  ],
  [
    /\b((hydrant|it) (was |has been |is )?(removed|gone)|no longer (there|exists)|does not exist|not found|no existe)\b/,
    'gone',
  ],
];

/** What a free remark says against relying on the hydrant, if anything. */
export const readRemark = firstMatch(remarkPatterns);

const counts = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight'];
const cuentas = ['cero', 'uno', 'dos', 'tres', 'cuatro', 'cinco', 'seis', 'siete', 'ocho'];

/** A small count written as a word, in English or Spanish; null otherwise. */
export function readCountWord(text: string): number | null {
  const word = folded(text);
  const place = Math.max(counts.indexOf(word), cuentas.indexOf(word));
  if (place >= 0) return place;
  return word === 'una' || word === 'single' ? 1 : word === 'double' ? 2 : word === 'triple' ? 3 : null;
}
