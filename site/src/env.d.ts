/// <reference types="astro/client" />

declare namespace App {
  /** What the publisher hands to a public page: what the public may know, and nothing else. */
  interface Locals {
    readonly edition: import('../../shared/public/edition.ts').PublicEdition;
    /** The hydrant of a hydrant's page; null on a page whose records were withdrawn. */
    readonly hydrant?: import('../../shared/public/hydrantPage.ts').PublicHydrantPage | null;
  }
}
