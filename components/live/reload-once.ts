const KEY = 'level-scoop/reloaded-for'

/** Loads the page anew when the server serves another build than this one, once per build. */
export const reloadOnceFor = (build: string): void => {
  const own = process.env.NEXT_PUBLIC_BUILD
  if (!own || own === build) return
  try {
    if (sessionStorage.getItem(KEY) === build) return
    sessionStorage.setItem(KEY, build)
  } catch {
    return
  }
  location.reload()
}
