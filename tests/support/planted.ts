/** Canaries in all that a command says of people. */
import type { Command } from '#lib/spine/registry.ts'

export const CANARY = 'QZXWVJ'

const OF_PEOPLE = ['name', 'initials', 'readBy']

const isNeed = (value: object): boolean => 'code' in value && 'handling' in value

const planted = (value: unknown): unknown => {
  if (typeof value !== 'object' || value === null) return value
  if (Array.isArray(value)) return value.map(planted)
  const inside = Object.entries(value).map(([key, one]): [string, unknown] => [
    key,
    OF_PEOPLE.includes(key) ? CANARY : planted(one),
  ])
  return { ...Object.fromEntries(inside), ...(isNeed(value) ? { reason: CANARY } : {}) }
}

/** How often a canary stands in what is written of a value. */
export const canariesIn = (value: unknown): number => JSON.stringify(value).split(CANARY).length - 1

/** A command with a canary where it names somebody, and as the reason of each of its needs. */
export const plantedIn = (command: Command): Command => planted(command) as Command
