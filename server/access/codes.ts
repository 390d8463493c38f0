/** What is typed to be let in: codes of a lead's screen, and the terminal's secret. */
import { randomBytes, timingSafeEqual } from 'node:crypto'
import { CODE_LENGTH, codeFrom, readCode, SECRET_LENGTH, shownCode } from '#lib/access/code.ts'
import { CODE_MS } from '#lib/access/life.ts'
import { MOST_CODES } from '#lib/access/tries.ts'
import type { Role } from '#lib/service/roles.ts'
import type { AgeingClock } from '#server/access/ageing-clock.ts'
import { type House, type JoinCode, sha256 } from '#server/access/house.ts'

export interface Codes {
  readonly secret: string
  /** Compares in a time that tells nothing. The data folder's owner may say the scripts' token too. */
  isSecret(typed: string): boolean
  /** A new one, for one device. The oldest is void where there are too many. */
  give(role: Role, station: string): { readonly typed: string; readonly until: number }
  /** The code that is typed, unless it was used, ran out, or never was. */
  find(typed: string): JoinCode | null
}

/** @param deps.scripts hash of the scripts' token */
export const createCodes = (
  house: Pick<House, 'codes' | 'addCode' | 'dropCode'>,
  clock: AgeingClock,
  scripts: Buffer,
): Codes => {
  const secret = codeFrom(randomBytes, SECRET_LENGTH)

  /** Void ones are dropped on the way. */
  const find = (code: string | null): JoinCode | null => {
    const now = clock.now()
    const hash = sha256(code ?? '')
    let found: JoinCode | null = null
    for (const [index, one] of house.codes().entries()) {
      if (index >= MOST_CODES || now - one.madeAt >= CODE_MS || now < one.madeAt)
        house.dropCode(one.hash)
      else if (timingSafeEqual(one.hash, hash)) found = one
    }
    return found
  }

  return {
    secret,
    isSecret: (typed) => {
      const code = readCode(typed, SECRET_LENGTH)
      const isOwners = timingSafeEqual(sha256(typed.trim()), scripts)
      return timingSafeEqual(sha256(code ?? ''), sha256(secret)) || isOwners
    },
    give: (role, station) => {
      const code = codeFrom(randomBytes, CODE_LENGTH)
      const madeAt = clock.now()
      house.addCode({ hash: sha256(code), role, station, madeAt })
      find(null)
      return { typed: shownCode(code), until: clock.onWall(madeAt + CODE_MS) }
    },
    find: (typed) => find(readCode(typed, CODE_LENGTH)),
  }
}
