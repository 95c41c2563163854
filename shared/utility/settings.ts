import * as z from 'zod';
import { clockSettings } from '../clocks/settings.ts';
import { digestSettings } from '../digest/settings.ts';
import { dispatchMessageSettings } from '../dispatch/settings.ts';
import { uploadBudget } from '../evidence/uploadBudget.ts';
import { alertSettings } from '../feeds/alertSettings.ts';
import { fireCoverRules } from '../fireCover/settings.ts';
import { flowTestRules } from '../hydraulics/flowTestSettings.ts';
import { claimRules } from '../payments/rules.ts';
import { mapTiles } from '../public/mapTiles.ts';

/** True for an IANA zone name that this runtime knows. */
export function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
    return true;
  } catch {
    return false;
  }
}

/** One deployment serves one utility. These are its settings; the time zone has no default because a wrong one bills wrong hours. */
export const utilitySettings = z.strictObject({
  name: z.string().trim().min(1).max(120),
  timeZone: z.string().refine(isTimeZone, { error: 'time-zone' }),
  locale: z.enum(['en', 'es']),
  units: z.enum(['us', 'metric']),
  /** Answered at any hour; stands on every public page. */
  emergencyPhone: z.string().trim().min(3).max(40),
  dispatch: z.strictObject({
    name: z.string().trim().min(1).max(120),
    phone: z.string().trim().min(3).max(40),
  }),
  letterhead: z.strictObject({
    addressLines: z.array(z.string().trim().min(1).max(100)).min(1).max(5),
    email: z.string().trim().max(120).nullable(),
    phone: z.string().trim().max(40),
    remitTo: z.array(z.string().trim().min(1).max(100)).min(1).max(6),
    /** Where a payer finds the tax form it asks for: its number, or who sends it. Printed in packets. */
    taxFormReference: z.string().trim().min(1).max(200).optional(),
  }),
  /**
   * How long after a strike the utility may sue, whole years, with the statute that says so; counsel confirms it. Left
   * out: no date is warned of. States differ, from 1 to 10 years, so there is no default.
   */
  limitation: z
    .strictObject({ years: z.int().min(1).max(20), citation: z.string().trim().min(1).max(200) })
    .optional(),
  /**
   * The claim's clocks: rules with their sources, holidays, warnings. Left out: only dates that papers name are watched,
   * and the date to sue of the setting above. No legal default is built in; `docs/clocks.md` says how to fill it in.
   */
  clocks: clockSettings.optional(),
  /** The state's rules on money that comes in (cheques marked as full payment, depreciation), cited; decision 0152. */
  claimRules: claimRules.optional(),
  /** The daily letter of what is due, to clerks and managers. Left out: none is sent. */
  digest: digestSettings.optional(),
  /** Messages to fire dispatch, and who gets them. Left out: none are sent, and crews tell dispatch themselves. */
  dispatchMessages: dispatchMessageSettings.optional(),
  /** The roll of people by id: names for the desk and the packet, never for the public. */
  people: z
    .array(
      z.strictObject({
        personId: z.string().min(1).max(64),
        name: z.string().min(1).max(80),
        trade: z.string().max(80).nullable(),
      }),
    )
    .max(2000),
  publishing: z.strictObject({
    /** How often the public pages are made anew even when nothing changed, minutes. */
    everyMinutes: z.number().int().min(1).max(60),
    /** A page older than this must not be relied on, minutes. */
    relyForMinutes: z.number().int().min(2).max(240),
    /** Decimal places of public positions; 5 is about 1 m. */
    positionDecimals: z.number().int().min(2).max(6),
    /** Whether rated flow is shown to the public beside the class. */
    showFlow: z.boolean(),
    /** Terms under which others may use the published data; left out, the pages state none. */
    license: z.strictObject({ name: z.string().trim().min(1).max(120), url: z.url() }).optional(),
    /** Alerts in the Common Alerting Protocol; left out, none are sent. */
    alerts: alertSettings.optional(),
    /** Where the map may take its streets from; left out, it shows none and asks nobody (decision 0216). */
    mapTiles: mapTiles.optional(),
  }),
  /**
   * The utility's own rules of the flow test, wherever a class is computed: form, hydrant screen, packet, public pages.
   * What is left out keeps its standard (docs/decisions/0110): classes with their names, colours and edges, rating
   * residual, half-static rule, least drop, pitot ranges, gauges, and the errors taken where a test does not say.
   */
  flowTest: flowTestRules.optional(),
  /** Fire cover on the public pages: hose carried, credit needed, the grid's spacing. Left out: the standard ones. */
  fireCover: fireCoverRules.optional(),
  /** What one person may send to the evidence store in a day. Left out: 2,000 files and 20,000 MB. */
  uploadsPerPersonDay: uploadBudget.optional(),
  /** Address of the public site, for links in feeds and packets; null until known. */
  publicUrl: z.url().nullable(),
});
export type UtilitySettings = z.infer<typeof utilitySettings>;
