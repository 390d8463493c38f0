/** In place of engine.io's transports that no screen asks for: the crew's sockets are WebSockets alone. */
const none = null

export { none as Fetch, none as WT, none as XHR }
