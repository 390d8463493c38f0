import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import stringify from 'safe-stable-stringify'
import type { ServiceState } from '#lib/service/state.ts'

/** SHA-256 of a value's JSON with sorted keys, in hex: the same on every screen and server. */
export const hashOf = (value: unknown): string =>
  bytesToHex(sha256(utf8ToBytes(stringify(value) ?? '')))

export const stateHash = (state: ServiceState): string => hashOf(state)
