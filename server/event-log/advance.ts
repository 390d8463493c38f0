type Listener = (service: string, position: number) => void

/** The listeners of a log, called in the order in which they came. */
export interface Advance {
  tell(service: string, position: number): void
  onAdvance(listener: Listener): () => void
}

export const createAdvance = (): Advance => {
  const listeners = new Map<symbol, Listener>()
  return {
    tell(service, position) {
      for (const listener of [...listeners.values()]) listener(service, position)
    },
    onAdvance(listener) {
      const key = Symbol('listener')
      listeners.set(key, listener)
      return () => {
        listeners.delete(key)
      }
    },
  }
}
