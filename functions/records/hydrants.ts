import * as z from 'zod';
import { findHydrants } from '../../shared/inventory/find.ts';
import { hydrantId as hydrantIdSchema, mayServe, type Hydrant } from '../../shared/inventory/hydrant.ts';
import { nearestInService, type Neighbour } from '../../shared/nearest/nearest.ts';
import { hydrantsWithin } from '../../shared/nearest/within.ts';
import type { HydrantStatus } from '../../shared/outages/hydrantStatus.ts';
import { problem, type Problem } from '../../shared/problems/problem.ts';
import { mainsOfHydrant } from '../../shared/shutMain/ofHydrant.ts';
import { ofKind } from '../../shared/submissions/effective.ts';
import { streamOf } from '../../shared/submissions/envelope.ts';
import type { Recorded } from '../../shared/submissions/recorded.ts';
import { memberOf, type RouteHandler } from '../http/app.ts';
import { notFound, refuse } from '../http/refused.ts';
import { searchTree } from '../stores/inventory/searchTree.ts';
import { recordsAround } from './around.ts';
import type { RecordsDeps } from './deps.ts';
import { asRecorded, factsOf, readStreams } from './facts.ts';
import { flowTestStreams, strikeStreams } from './flowTests.ts';

const USUAL_LIMIT = 20;
const MOST_LIMIT = 100;
/** With a distance: what a device takes along to find a hydrant with no signal. About 600 bytes each, a tenth of it packed. */
const MOST_WITHIN = 2000;
/** Five miles. */
const MOST_WITHIN_FT = 26_400;
/** Hydrants in service that are offered in place of one that is not. */
const NEAREST = 5;

const degrees = (most: number) => z.coerce.number().min(-most).max(most);
const decimal = /^[+-]?\d{1,3}(\.\d{1,15})?$/;

interface Asked {
  readonly find: string | null;
  readonly near: { readonly latitudeDeg: number; readonly longitudeDeg: number } | null;
  readonly withinFt: number | null;
  readonly limit: number;
}

/** Reads `?find=`, or `?near=lat,lon` and `&within=feet`, and `&limit=`; refuses with everything that is wrong with them. */
function readQuery(query: (name: string) => string | undefined): Asked {
  const problems: Problem[] = [];
  const limit = query('limit') ?? String(USUAL_LIMIT);
  const within = query('within') ?? null;
  const most = within === null ? MOST_LIMIT : MOST_WITHIN;
  if (!isWhole(limit, most)) problems.push(problem('limit-not-a-number', 'limit', { maximum: most }));
  if (within !== null && !isWhole(within, MOST_WITHIN_FT))
    problems.push(problem('within-not-a-number', 'within', { maximum: MOST_WITHIN_FT }));

  const find = query('find') ?? null;
  if (find !== null && find.length > 200) problems.push(problem('too-long', 'find', { maximum: 200 }));
  const given = query('near') ?? null;
  const parts = given === null ? [] : given.split(',').map((part) => part.trim());
  const near = z
    .tuple([degrees(90), degrees(180)])
    .safeParse(parts.every((part) => decimal.test(part)) ? parts : null);
  if (given !== null && !near.success) problems.push(problem('near-not-a-place', 'near'));
  if ((find === null) === (given === null) || (within !== null && given === null))
    problems.push(problem('find-or-near', 'find'));
  if (problems.length > 0) return refuse('invalid', problems);
  return {
    find,
    near: near.success ? { latitudeDeg: near.data[0], longitudeDeg: near.data[1] } : null,
    withinFt: within === null ? null : Number(within),
    limit: Number(limit),
  };
}

/** A whole number from 1 on, in plain digits. */
const isWhole = (text: string, most: number): boolean =>
  /^\d{1,6}$/.test(text) && Number(text) >= 1 && Number(text) <= most;

/** Hydrants: found by number or place, or near somewhere; and one with what is known of it. */
export function hydrantRoutes({ current, inventory, ledger }: RecordsDeps): Record<string, RouteHandler> {
  const outOfService = async (): Promise<ReadonlySet<string>> =>
    new Set((await current.hydrants()).flatMap(({ hydrantId, inService }) => (inService ? [] : [hydrantId])));

  const flowTestsOf = async (hydrantId: string, status: HydrantStatus | null): Promise<Recorded[]> => {
    const facts = await factsOf(ledger, await flowTestStreams(current, hydrantId, status));
    return ofKind(facts, 'flow-test')
      .filter(({ fact }) => fact.body.residualHydrantId === hydrantId)
      .map(asRecorded);
  };

  /** Of a hydrant of which nothing was recorded nothing is read, and of its strikes only where a main was shut. */
  const mainsOf = async (hydrantId: string, status: HydrantStatus | null) => {
    if (!status) return null;
    const own = await readStreams(ledger, [streamOf({ type: 'hydrant', hydrantId })]);
    if (mainsOfHydrant(own) === null) return null;
    return mainsOfHydrant([...own, ...(await readStreams(ledger, await strikeStreams(current, status)))]);
  };

  return {
    'GET /api/hydrants': async (call) => {
      const { find, near, withinFt, limit } = readQuery((name) => call.req.query(name));
      const [stock, out] = await Promise.all([inventory.current(), outOfService()]);
      const withService = (hydrant: Hydrant) => ({ hydrant, inService: !out.has(hydrant.hydrantId) });
      if (!stock) return call.json({ hydrants: [] });
      const hydrants =
        near === null
          ? findHydrants(stock.hydrants, find ?? '', limit).map(withService)
          : (withinFt === null
              ? nearestInService(searchTree(stock), near, limit, () => true)
              : hydrantsWithin(searchTree(stock), near, withinFt).slice(0, limit)
            ).map(({ hydrant, distanceFt }) => ({ ...withService(hydrant), distanceFt }));
      return call.json({ hydrants });
    },

    'GET /api/hydrants/{hydrantId}': async (call) => {
      // As it is written everywhere, however it was typed into the address.
      const hydrantId = hydrantIdSchema.safeParse(call.req.param('hydrantId') ?? '').data ?? '';
      const [stock, status, out] = await Promise.all([
        inventory.current(),
        current.hydrant(hydrantId),
        outOfService(),
      ]);
      const hydrant = stock?.byId.get(hydrantId) ?? null;
      // A crew can name a hydrant that the inventory lacks; what it recorded is still there to be read.
      if (!hydrant && !status) return notFound('no-such-hydrant');
      const serves = (other: Hydrant): boolean =>
        other.hydrantId !== hydrantId && mayServe(other) && !out.has(other.hydrantId);
      const nearest: Neighbour<Hydrant>[] =
        stock && hydrant ? nearestInService(searchTree(stock), hydrant, NEAREST, serves) : [];
      const [flowTests, mains, around] = await Promise.all([
        flowTestsOf(hydrantId, status),
        mainsOf(hydrantId, status),
        recordsAround({ current, ledger }, memberOf(call), status),
      ]);
      return call.json({ hydrant, status, flowTests, nearest, around, ...(mains ? { mains } : {}) });
    },
  };
}
