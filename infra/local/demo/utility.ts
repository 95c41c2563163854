import type { UtilitySettings } from '../../../shared/utility/settings.ts';
import { demoClocks } from './clocks.ts';

/**
 * The demo utility: an invented town on an invented harbour (its coordinates lie in open sea, where no town is),
 * invented people, invented hydrant models. Telephone numbers are from the range kept for fiction (555-01xx).
 */
export const demoUtility: UtilitySettings = {
  name: 'Tansy Harbor Water Department',
  timeZone: 'America/New_York',
  locale: 'en',
  units: 'us',
  emergencyPhone: '555-0100',
  dispatch: { name: 'Tansy Harbor Fire Dispatch', phone: '555-0111' },
  letterhead: {
    addressLines: ['Tansy Harbor Water Department', '14 Pumphouse Lane', 'Tansy Harbor'],
    email: 'claims@water.tansyharbor.example',
    phone: '555-0122',
    remitTo: ['Tansy Harbor Water Department', 'Cashier, 14 Pumphouse Lane', 'Tansy Harbor'],
  },
  people: [
    { personId: 'w-101', name: 'Odalys Brennick', trade: 'Crew lead' },
    { personId: 'w-102', name: 'Tobin Marsh-Aldana', trade: 'Utility worker' },
    { personId: 'w-103', name: 'Perpetua Lindqvane', trade: 'Equipment operator' },
    { personId: 'w-201', name: 'Casimir Dowell-Ng', trade: 'Crew lead' },
    { personId: 'w-202', name: 'Imke Santorelli', trade: 'Utility worker' },
    { personId: 'w-203', name: 'Lazar Whitcombe', trade: 'Equipment operator' },
    { personId: 'c-301', name: 'Rosalind Ekberg-Vance', trade: 'Claims clerk' },
    { personId: 'm-401', name: 'Anselm Quarshie', trade: 'Distribution manager' },
  ],
  publishing: { everyMinutes: 5, relyForMinutes: 20, positionDecimals: 5, showFlow: true },
  clocks: demoClocks,
  claimRules: {
    fullPayment: {
      repayWithinDays: 90,
      officeNamed: null,
      citation: 'Example enactment of UCC 3-311(c)(2)',
      jurisdiction: 'invented',
      confirmedBy: null,
    },
    depreciation: {
      position: 'not-deducted',
      citation: 'Example court, 1994',
      jurisdiction: 'invented',
      confirmedBy: null,
    },
  },
  digest: {
    hour: 7,
    from: 'claims@water.tansyharbor.example',
    to: [
      { personId: 'c-301', email: 'rosalind@water.tansyharbor.example' },
      { personId: 'm-401', email: 'anselm@water.tansyharbor.example' },
    ],
    whenNothing: 'send',
  },
  dispatchMessages: {
    on: true,
    from: 'hydrants@water.tansyharbor.example',
    callBack: '555-0100',
    tooOldHours: 12,
    nearest: 5,
    textSegments: 2,
    to: [
      {
        recipientId: 'dispatch-floor',
        label: 'Dispatch floor',
        by: 'email',
        email: 'floor@dispatch.tansyharbor.example',
      },
      { recipientId: 'duty-officer', label: 'Duty officer’s telephone', by: 'text', phone: '+12025550111' },
    ],
  },
  publicUrl: null,
};

/** Who signs in for each role in the demo. */
export const demoMembers = { crew: 'w-101', clerk: 'c-301', manager: 'm-401' } as const;
