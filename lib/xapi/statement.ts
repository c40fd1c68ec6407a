/** What a request says it follows. */
export const XAPI_VERSION = "1.0.3";

/** In English only. */
export type LanguageMap = Readonly<Record<"en", string>>;

export interface Account {
  readonly objectType: "Agent";
  readonly account: { readonly homePage: string; readonly name: string };
}

export interface Verb {
  readonly id: string;
  readonly display: LanguageMap;
}

export interface Activity {
  readonly objectType: "Activity";
  readonly id: string;
  readonly definition: {
    readonly type: string;
    readonly name: LanguageMap;
    readonly interactionType?: "choice";
    readonly choices?: readonly { readonly id: string; readonly description: LanguageMap }[];
    readonly correctResponsesPattern?: readonly string[];
  };
}

export interface Score {
  /** 0 to 1. */
  readonly scaled: number;
  readonly raw: number;
  readonly min: number;
  readonly max: number;
}

export interface Result {
  readonly score?: Score;
  readonly success?: boolean;
  readonly completion?: boolean;
  readonly response?: string;
  /** ISO 8601. */
  readonly duration?: string;
  readonly extensions?: Readonly<Record<string, string | number>>;
}

/** A statement of the Experience API, version 1.0.3, as far as the workshop makes any. */
export interface Statement {
  readonly id: string;
  readonly actor: Account;
  readonly verb: Verb;
  readonly object: Activity | { readonly objectType: "StatementRef"; readonly id: string };
  readonly result?: Result;
  readonly context?: {
    readonly registration: string;
    readonly platform: string;
    readonly language: string;
    readonly contextActivities: {
      readonly parent?: readonly Activity[];
      readonly grouping: readonly Activity[];
    };
  };
  /** ISO 8601, in UTC. */
  readonly timestamp: string;
  /** Of the data model, which no 1.0.x changed; whoever sets it has to set this. */
  readonly version: "1.0.0";
}

const verb = (name: string): Verb => ({ id: `http://adlnet.gov/expapi/verbs/${name}`, display: { en: name } });

/** Of the ADL vocabulary. */
export const VERBS = {
  passed: verb("passed"),
  failed: verb("failed"),
  answered: verb("answered"),
  completed: verb("completed"),
  voided: verb("voided"),
} as const;

/** Of the ADL vocabulary as well. */
export const activityType = (
  name: "assessment" | "simulation" | "course" | "cmi.interaction" | "performance",
): string => `http://adlnet.gov/expapi/activities/${name}`;

/** Whole seconds as a duration of ISO 8601: 754 gives "PT12M34S". */
export function isoDuration(seconds: number): string {
  const [hours, minutes, rest] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60];
  const parts = [hours > 0 && `${hours}H`, minutes > 0 && `${minutes}M`, rest > 0 && `${rest}S`].filter(Boolean);
  return `PT${parts.join("") || "0S"}`;
}
