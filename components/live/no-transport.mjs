/** In place of engine.io's transports that no screen asks for: the crew's sockets are WebSockets alone. */
class NoTransport {}

export { NoTransport as Fetch, NoTransport as WT, NoTransport as XHR }
