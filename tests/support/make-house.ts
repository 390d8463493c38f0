import type { MakeHouse } from '#lib/access/http.ts'
import { scriptsToken } from '#server/shell/scripts-token.ts'

/** The person in charge's on every server that stories are played on. */
export const PASSPHRASE = 'kettle lantern orchard'

/** The lead's there. */
export const LEADS_PASSPHRASE = 'walnut harbour mitten'

/**
 * Makes the house of a server on this machine, unless somebody did, as whoever owns its data folder.
 * @throws where it can't be reached, or its file can't be read
 */
export const makeHouse = async (url: string): Promise<void> => {
  const secret = await scriptsToken(url)
  if (secret === null) throw new Error(`no token for scripts of ${url}`)
  const wanted: MakeHouse = {
    secret,
    lead: { name: 'Lead', passphrase: LEADS_PASSPHRASE },
    inCharge: { name: 'In charge', passphrase: PASSPHRASE },
  }
  const answer = await fetch(`${url}/access/make`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(wanted),
  })
  const { code } = (await answer.json()) as { readonly code: string }
  if (code !== 'done' && code !== 'made-already') throw new Error(`the house wasn't made: ${code}`)
}
