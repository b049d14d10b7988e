import { hostPort } from './port.ts';
import { work } from './work.ts';

/** A solver process: one job at a time; a newer one replaces it, a stop ends it. */

const port = hostPort();
/** The one job that may go on. */
let wanted = '';

port.listen((message) => {
  if (message.kind === 'stop') {
    if (message.jobId === wanted) wanted = '';
    return;
  }
  wanted = message.jobId;
  void work(
    message,
    (told) => port.send(told),
    () => wanted === message.jobId,
  );
});
