/** A new adult while name and passphrase are typed. */
import {
  FEWEST_CHARACTERS,
  nameKept,
  nameKey,
  passphraseForm,
  passphraseProblem,
} from '#lib/access/passphrase.ts'

export interface TypedAdult {
  readonly name: string
  readonly passphrase: string
}

export const NOBODY: TypedAdult = { name: '', passphrase: '' }

/** How each rule of a passphrase is met by what is typed so far. */
export interface RulesMet {
  /** Characters that are still missing; 0 where none is. */
  readonly more: number
  /** False also while it is too short to tell. */
  readonly isUncommon: boolean
  /** It isn't one of `others`; false while nothing is typed. */
  readonly isOwn: boolean
}

export const rulesMet = (passphrase: string, others: readonly string[]): RulesMet => {
  const form = passphraseForm(passphrase)
  return {
    more: Math.max(0, FEWEST_CHARACTERS - [...form].length),
    isUncommon: passphraseProblem(passphrase) === null,
    isOwn: form !== '' && !others.map(passphraseForm).includes(form),
  }
}

/** What is missing before an adult can be made, the first of it; null where nothing is. */
export const adultLacks = (
  { name, passphrase }: TypedAdult,
  others: readonly TypedAdult[],
):
  | 'no-name'
  | 'name-taken'
  | 'too-short'
  | 'too-long'
  | 'too-common'
  | 'same-passphrase'
  | null => {
  if (nameKept(name) === null) return 'no-name'
  if (others.some((other) => nameKey(other.name) === nameKey(name))) return 'name-taken'
  const isOwn = rulesMet(
    passphrase,
    others.map((other) => other.passphrase),
  ).isOwn
  return passphraseProblem(passphrase) ?? (isOwn ? null : 'same-passphrase')
}
