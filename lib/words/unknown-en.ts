/** Sentences for what a command names that there isn't. */
import type { Unknown } from '#lib/service/refusal.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import type { NameOf } from '#lib/words/said-here.ts'
import { needName } from '#lib/words/service-en.ts'

type Say = (id: string, name: NameOf) => string

const sentences: Readonly<Record<Unknown, Say>> = {
  station: () => 'There is no station of that name.',
  item: (id) => `Nothing called “${id}” is on the menu.`,
  component: (id) => `The line has no “${id}”.`,
  ingredient: (id) => `The station has no ingredient “${id}”.`,
  pan: (id) => `The line has no pan “${id}”.`,
  backup: (id) => `There is no back-up pan “${id}” of it.`,
  'protected-backup': (id, name) =>
    `There is no protected back-up pan for ${name(id)}. Ask the person in charge.`,
  batch: (id) => `There is no batch “${id}” in this service.`,
  tool: (id) => `There is no tool “${id}” at hand.`,
  ticket: (id) => `There is no ticket ${id} in this service.`,
  build: (id) => `There is no ${sayBuild(id)} in this service.`,
  need: (id) =>
    `This station’s labels say nothing of ${needName(id)}. Ask the guest for what it is, and call the person in charge.`,
  order: (id) => `Nothing called “${id}” can be ordered here, so nothing can be saved for it.`,
  caution: () => 'The person in charge hasn’t accepted this caution. Call them again.',
  advice: () => 'That isn’t on the list any more.',
  task: () => 'That task isn’t in this plan any more. Look again at the list.',
  bells: (id) => `The station has no bell schedule “${id}”. Choose one of its own, or none.`,
}

export const sayUnknown = (what: Unknown, ...said: Parameters<Say>): string =>
  sentences[what](...said)
