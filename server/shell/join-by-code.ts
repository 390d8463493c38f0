import { z } from 'zod'
import type { JoinByCode } from '#lib/access/http.ts'

const answerSchema = z.object({ code: z.string() })

/** Joins as a device by a code that a lead's screen shows: its token, or the code of why not. */
export const joinByCode = async (
  url: string,
  code: string,
  name: string,
): Promise<{ readonly token: string } | { readonly token: null; readonly why: string }> => {
  const wanted: JoinByCode = { code, name }
  try {
    const answer = await fetch(new URL('/access/join', url), {
      method: 'POST',
      headers: { 'content-type': 'application/json', origin: new URL(url).origin },
      body: JSON.stringify(wanted),
    })
    const cookie = answer.headers.getSetCookie()[0] ?? ''
    const token = /^level-scoop-[^=]+=([\w.-]+)/.exec(cookie)?.[1]
    if (token !== undefined) return { token }
    const told = answerSchema.safeParse(await answer.json())
    return { token: null, why: told.success ? told.data.code : 'failed' }
  } catch {
    return { token: null, why: 'failed' }
  }
}
