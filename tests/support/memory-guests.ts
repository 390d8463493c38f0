import type { Guests } from '#server/guests/port.ts'

/** Names that last as long as the process: for tests and simulations. */
export const createMemoryGuests = (): Guests => {
  const services = new Map<string, Map<string, string>>()
  const dropEmpty = (service: string) => {
    if (services.get(service)?.size === 0) services.delete(service)
  }
  return {
    async put(service, command, name) {
      const names = services.get(service) ?? new Map<string, string>()
      services.set(service, names)
      if (!names.has(command)) names.set(command, name)
    },
    async namesOf(service) {
      return Object.fromEntries(services.get(service) ?? [])
    },
    async services() {
      return [...services.keys()].sort()
    },
    async sweep(service, keep) {
      const names = services.get(service)
      const orphans = [...(names?.keys() ?? [])].filter((command) => !keep.has(command))
      for (const command of orphans) names?.delete(command)
      dropEmpty(service)
      return orphans.length
    },
    async forget(service) {
      services.delete(service)
    },
    async close() {
      services.clear()
    },
  }
}
