/** Asking closer: kinds, reasons, what stands behind "more", and a need told late, in English. */

import { sayBuild } from '#lib/service/tickets.ts'
import type { Reason } from '#lib/station/codes/codes.ts'
import { list } from '#lib/words/counted-en.ts'

export const needsEn = {
  done: 'Done',
  handling: 'How strict?',
  keepApart: 'Keep apart',
  keepApartWhy: 'shared scoops and pans count',
  leaveOut: 'Leave out only',
  leaveOutWhy: 'not in it is enough',
  kinds: '“All of them, or only one kind?”',
  all: 'All of them',
  reason: 'Why, if the guest says so',
  reasons: {
    allergy: 'Allergy',
    coeliac: 'Celiac disease',
    faith: 'Faith',
    diet: 'Diet',
    dislike: 'Dislike',
  } satisfies Record<Reason, string>,

  tellTitle: (build: string) => `What does the guest of ${sayBuild(build)} say?`,
  tell: (build: string) => `Stop ${sayBuild(build)} now`,
  tellWhy: 'It stops on every screen. Then change it or cancel it.',
  tellNothing: 'Nothing new. Leave it',
  tellNotSure: 'Not sure: stop it',
  telling: 'Telling …',
  told: (build: string) => `${sayBuild(build)} is stopped.`,
  sameGuest: (build: string) => `Is ${sayBuild(build)} for the same guest?`,
  sameGuestYes: (build: string) => `Yes: stop ${sayBuild(build)} as well`,
  sameGuestNo: 'No, for another guest',
  sameGuestNoWhy: 'Nothing changes for it.',
  toldJustNow: 'Told just now',
  unsure: 'not sure what they can eat',
  heldUnsure: 'held: not changed here',
  unsureThen: 'Cancel it and take a new order, or call the person in charge.',
  tellA: 'Add an allergy',
  tellOf: (build: string) => `Add an allergy: the guest of ${sayBuild(build)}`,
  handedOver: 'Handed over lately',
  toFind: 'handed over: find the guest',
  handedOverTell: 'Has the guest of one said something new? Tap “Add an allergy”.',
  heldNow: (builds: readonly string[]) => `Held: ${list(builds.map(sayBuild), 'and')}`,
  findNow: (builds: readonly string[]) =>
    builds.length === 1
      ? `Find the guest of ${sayBuild(builds[0] ?? '')}, now`
      : `Find the guests of ${list(builds.map(sayBuild), 'and')}, now`,
  see: 'See them',
} as const
