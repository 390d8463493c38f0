/** At which assembly screen a build is made, and what that means to another one. */
import type { Build } from '#lib/service/state.ts'

/**
 * Name of the other screen that a build is, or was, made at; null where it is this one's, or where
 * none was said. `here` is this screen's name, null for one that takes all builds as its own.
 */
export const elsewhere = ({ screen }: Build, here: string | null): string | null =>
  screen === undefined || here === null || screen === here ? null : screen

/** A build that this screen made until another one took it over. */
export interface TakenAway {
  readonly name: string
  readonly screen: string
}
