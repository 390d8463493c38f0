/** What the person in charge reads and does at the counter, in English. */

import { cautionReason } from '#lib/rooms/care/words/held-en.ts'
import type { CautionReason } from '#lib/service/events/caution-reasons.ts'
import { startingWith } from '#lib/words/findings-en.ts'

export const inChargeEn = {
  signOnTitle: 'Person in charge: sign on',
  signOnWhy:
    'Keep apart is taken only while the certified person in charge is there. Local code and that person decide.',
  cautionTitle: (item: string) => `${item}: read this to the guest`,
  cautionWhy:
    'Only the person in charge accepts it, together with the guest. It is noted on the build.',
  guestSaid: (needs: string) => `The guest told us: ${needs}`,
  why: 'Why is it all right?',
  reason: (reason: CautionReason) => startingWith(cautionReason[reason]),
  passphrase: 'Passphrase of the person in charge',
  signOn: 'Sign on',
  accept: 'The guest accepts it: I accept it',
  signOnAndAccept: 'Sign on, and accept it',
  decline: 'Not accepted. Back',
  back: 'Back',
  working: 'Checking …',
  noConnection: 'No connection: this can’t be checked now.',
  chooseReason: 'Tap why it is all right.',
  tooShort: 'Type the whole passphrase.',
  signedOn: 'The person in charge is signed on.',
} as const
