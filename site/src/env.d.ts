/// <reference types="astro/client" />
import type { PublicArea } from '../../shared/public/areas.ts';
import type { PublicYear } from '../../shared/yearly/schema.ts';
import type { PublicEdition } from '../../shared/public/edition.ts';
import type { PublicStation } from '../../shared/stations/page.ts';
import type { PublicHydrantPage } from '../../shared/public/hydrantPage.ts';

declare global {
  namespace App {
    /** What the publisher hands to a public page: what the public may know, and nothing else. */
    interface Locals {
      readonly edition: PublicEdition;
      /** The hydrant of a hydrant's page; null on a page whose records were withdrawn. */
      readonly hydrant?: PublicHydrantPage | null;
      /** The area of a station's page. */
      readonly station?: PublicStation;
      /** The year of a year's page. */
      readonly year?: PublicYear;
      /** What a page that lists one area lists. */
      readonly area?: { readonly area: PublicArea; readonly part: number };
      /** Which part of the list of those not re-tested, from 1. */
      readonly notRetestedPart?: number;
    }
  }
}
