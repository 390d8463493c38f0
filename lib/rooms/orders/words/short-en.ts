/** What the counter says of builds that the pans can no longer fill, in English. */
import { sayBuild } from '#lib/service/tickets.ts'
import { inSentence } from '#lib/words/findings-en.ts'

export const shortEn = {
  shortNow: (builds: readonly string[]) =>
    builds.length === 1
      ? `${sayBuild(builds[0] ?? '')}: the pans are short for it.`
      : `${builds.map(sayBuild).join(', ')}: the pans are short for them.`,
  short: (component: string) => `Short: not enough ${inSentence(component)} in the pan.`,
  shortOffSale: (component: string) => `Short: don’t serve the ${inSentence(component)} now.`,
  shortClock: (component: string) =>
    `Short: the clock jumped, and nobody knows how old the ${inSentence(component)} is. Call the lead.`,
  shortWaits: (component: string) => `The guest waits for ${inSentence(component)}.`,
  shortMore: (at: string) => `More by about ${at}.`,
  shortReady: (count: number) => `${count} more ready: call the lead.`,
  shortNoMore: 'No more is on its way.',
  waitFor: (build: string) => `${sayBuild(build)}: the guest waits`,
  guestWaits: 'Guest waits',
  saidWaits: (build: string) => `${sayBuild(build)} waits for more.`,
} as const
