/** What a device remembers by itself. Without storage (private mode) it forgets at reload. */
const PREFIX = 'level-scoop/'

export const readKept = (key: string): string | null => {
  try {
    return localStorage.getItem(PREFIX + key)
  } catch {
    return null
  }
}

export const keep = (key: string, value: string | null): void => {
  try {
    if (value === null) localStorage.removeItem(PREFIX + key)
    else localStorage.setItem(PREFIX + key, value)
  } catch {
    return
  }
}
