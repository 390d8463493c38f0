import type { Command } from '#lib/spine/registry.ts'

/** A command that waits for its answer. */
export interface Pending {
  readonly id: string
  readonly service: string
  readonly command: Command
}

/** Where a device keeps what it hasn't had an answer to, so that a reload loses nothing. */
export interface Outbox {
  all(): Promise<readonly Pending[]>
  put(pending: Pending): Promise<void>
  remove(id: string): Promise<void>
}

export const createMemoryOutbox = (): Outbox => {
  const kept = new Map<string, Pending>()
  return {
    all: async () => [...kept.values()],
    put: async (pending) => {
      kept.set(pending.id, pending)
    },
    remove: async (id) => {
      kept.delete(id)
    },
  }
}
