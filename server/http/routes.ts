/** What is answered over HTTP: a path and method that no row names is not. */
import type { IncomingMessage, ServerResponse } from 'node:http'
import type { BodyRule } from '#server/http/body.ts'

/** A request that passed the edge. */
export interface Asked {
  readonly request: IncomingMessage
  readonly response: ServerResponse
  /** Read whole; empty where the route takes none. */
  readonly body: Buffer
  /** Where it comes from, in one form; no header is believed. */
  readonly from: string
}

export interface Route {
  /** As it is asked, without a query: nothing is decoded, and no part of it is free. */
  readonly path: string
  /** GET answers HEAD too. A POST is answered to a page of this very host only, or a script. */
  readonly method: 'GET' | 'POST'
  /** What a POST takes; nothing where left away. */
  readonly body?: BodyRule
  /** Why it isn't answered, asked before a body is read; null where it may be. */
  readonly refuses?: (
    request: IncomingMessage,
  ) => { readonly status: number; readonly told: { readonly code: string } } | null
  readonly answer: (asked: Asked) => void | Promise<void>
}

export interface RouteTable {
  /** The route; the methods of the path where none of them was asked; null where no row names it. */
  find(path: string, method: string): Route | { readonly allow: string } | null
}

/** @throws where two rows say the same, or a body is declared that is never read */
export const createRouteTable = (routes: readonly Route[]): RouteTable => {
  const byPath = new Map<string, Map<string, Route>>()
  for (const route of routes) {
    const rows = byPath.get(route.path) ?? new Map<string, Route>()
    if (rows.has(route.method)) throw new Error(`two routes: ${route.method} ${route.path}`)
    if (route.method === 'GET' && route.body) throw new Error(`GET with a body: ${route.path}`)
    byPath.set(route.path, rows.set(route.method, route))
  }
  return {
    find: (path, method) => {
      const rows = byPath.get(path)
      if (rows === undefined) return null
      const found = rows.get(method === 'HEAD' ? 'GET' : method)
      const allow = [...rows.keys()].map((one) => (one === 'GET' ? 'GET, HEAD' : one)).join(', ')
      return found ?? { allow }
    },
  }
}

/** A row for what is only read, as JSON. */
export const reads = (path: string, answer: Route['answer']): Route => ({
  path,
  method: 'GET',
  answer,
})
