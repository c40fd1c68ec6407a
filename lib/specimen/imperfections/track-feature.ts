import type { ImperfectionType } from "../../imperfections";
import type { FaceWork, Feature } from "../work";
import { cutGasTrack, type GasTrack, paintGasTrack, type TrackTrace } from "./gas-track";
import { measuredTracks } from "./measured-track";

/** A feature of one or more gas tracks, drawn when the metal lies there. Truth: see `measuredTracks`. */
export function trackFeature(
  id: string,
  type: ImperfectionType,
  drawTracks: (work: FaceWork) => readonly GasTrack[],
  bridge: number,
): Feature {
  const cut: { track: GasTrack; trace: TrackTrace }[] = [];
  return {
    id,
    cut(work) {
      for (const track of drawTracks(work)) cut.push({ track, trace: cutGasTrack(work.strip, track) });
    },
    paint({ strip }) {
      for (const { track, trace } of cut) paintGasTrack(strip, track, trace);
    },
    measure: (work) =>
      measuredTracks(
        work,
        id,
        type,
        cut.map(({ track }) => track),
        bridge,
      ),
  };
}
