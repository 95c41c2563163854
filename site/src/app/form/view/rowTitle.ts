import { useObservable } from '../../core/observable.ts';
import { people } from '../../core/people.ts';
import { textOf, type List, type Values } from '../nodes.ts';

/** What a timed row is called: the person's name, or what the machine is; its number where nothing better is known. */
export function useTitleOf(list: string): (row: Values) => string {
  const roll = useObservable(people);
  return (row) => {
    if (list !== 'crew') return textOf(row['description']).trim() || textOf(row['machineCode']).trim();
    const id = textOf(row['workerId']).trim();
    return roll.find(({ personId }) => personId === id)?.name ?? id;
  };
}

/** Whether the fields that the schema asks for, times apart, are filled in. */
export const isNamed = (list: List, row: Values): boolean =>
  list.item.every(
    (node) =>
      (node.type !== 'text' && node.type !== 'person') ||
      node.required !== true ||
      textOf(row[node.name]).trim() !== '',
  );
