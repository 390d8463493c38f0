/** What the commands of the shell say. */
export const drive = {
  usage: (roles: string) =>
    `npm run -s drive -- --url http://127.0.0.1:4321 --role ROLE [--token-file FILE | --code CODE]\nROLE is one of: ${roles}`,
  /** How a script is called in the lead's list of devices. */
  name: 'Script (drive)',
  notLetIn: (why: string) =>
    why === 'not-joined'
      ? 'This server lets in devices that have joined. On its own computer, run this as the user that runs the server, or name its file: --token-file DATA/scripts-token. On another: --code CODE, from the lead’s screen.'
      : `The server didn’t let this in: ${why}.`,
  notJoined: (why: string) => `That code didn’t join this script: ${why}.`,
  noServer: (url: string) => `No Level Scoop server answers at ${url}.`,
} as const

export const log = {
  usage: 'npm run -s log -- --data DIR [--service ID] [--fold] [--as ROLE] [--upto POSITION]',
  noLog: (folder: string) => `There is no log in ${folder}.`,
} as const
