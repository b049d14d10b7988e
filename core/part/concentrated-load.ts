/** The least share of the distance between the side frames that may take a brake's full force. */
const LEAST_SHARE = 0.6;

/**
 * What a brake's bed and ram stand over a length: the full force spread over 60 % of the distance between the side
 * frames, never over less. Any force unit comes back per millimetre.
 * Published: an article of the trade press on the limits of press brake tooling; 100 tons and 10 ft between the frames
 * make 16.7 tons a foot.
 * @param betweenFramesMm above 0
 */
export const mostPerMm = (force: number, betweenFramesMm: number): number =>
  force / (LEAST_SHARE * betweenFramesMm);
