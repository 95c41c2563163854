import type { FunctionName } from '../../../infra/aws/permissions.ts';
import { resourcesOf, synthesise, type Resource } from '../../infra/aws/synthesised.ts';
import type { Mapping } from './eventSource.ts';

/** What the template says, made once. */
let made: Record<string, Resource> | undefined;
export const resources = (): Record<string, Resource> => (made ??= resourcesOf(synthesise().service));

export const ofType = (type: string): [string, Resource][] =>
  Object.entries(resources()).filter(([, { Type }]) => Type === type);

/** The logical id of a function. */
export function functionId(name: FunctionName): string {
  const found = ofType('AWS::Lambda::Function').find(([id]) => id.startsWith(`Function${name}Handler`));
  if (!found) throw new Error(`the template has no function ${name}`);
  return found[0];
}

/** How a function follows its stream, as it would be deployed. */
export function mappingOf(name: FunctionName): Mapping {
  const found = ofType('AWS::Lambda::EventSourceMapping').find(([, { Properties }]) =>
    JSON.stringify(Properties['FunctionName']).includes(functionId(name)),
  );
  if (!found) throw new Error(`${name} follows no stream`);
  return found[1].Properties as unknown as Mapping;
}
