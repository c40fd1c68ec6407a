import { type Account, type Activity, activityType } from "./statement";
import { namedUuid, OF_ADDRESSES } from "./uuid";

/** The workshop that statements come from: everything in them is named under its address. */
export interface XapiPlace {
  /** "https://weld.example", with no slash at its end. */
  readonly home: string;
}

/** The same for the same thing of the same workshop, however often it is told. */
export const idOf = ({ home }: XapiPlace, name: string): string => namedUuid(namedUuid(OF_ADDRESSES, home), name);

/** A learner under a number that says nothing: who it is, only the workshop can tell. */
export const learnerAccount = (place: XapiPlace, userId: string): Account => ({
  objectType: "Agent",
  account: { homePage: place.home, name: idOf(place, `learner/${userId}`) },
});

/** The workshop itself, as who takes a statement back. */
export const workshopAccount = ({ home }: XapiPlace): Account => ({
  objectType: "Agent",
  account: { homePage: home, name: "workshop" },
});

interface Described {
  readonly type: Parameters<typeof activityType>[0];
  readonly name: string;
}

/** Something that is done in the workshop; `path` tells it from everything else there. */
export const activity = ({ home }: XapiPlace, path: string, { type, name }: Described): Activity => ({
  objectType: "Activity",
  id: `${home}/activities/${path.split("/").map(encodeURIComponent).join("/")}`,
  definition: {
    type: activityType(type),
    name: { en: name },
  },
});
