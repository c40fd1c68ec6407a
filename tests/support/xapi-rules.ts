/**
 * What is wrong with a statement by the Experience API 1.0.3 (adlnet/xAPI-Spec, xAPI-Data.md: 2.2 formatting, 2.4 properties, 4.0
 * special data types), written from that text and not from our builder. Only what our statements may have is known; anything else
 * is a problem, as 2.2.s4.b1.b7 has it.
 */
export function problemsOf(statement: unknown): readonly string[] {
  const problems: string[] = [];
  const say = (where: string, what: string) => problems.push(`${where}: ${what}`);

  const object = (where: string, value: unknown, known: readonly string[], needed: readonly string[]) => {
    if (typeof value !== "object" || value === null || Array.isArray(value)) {
      say(where, "not an object");
      return {} as Record<string, unknown>;
    }
    for (const [key, one] of Object.entries(value)) {
      if (!known.includes(key)) say(where, `${key} is not allowed`);
      if (one === null) say(where, `${key} is null`);
    }
    for (const key of needed) if (!(key in value)) say(where, `${key} is missing`);
    return value as Record<string, unknown>;
  };
  const matches = (where: string, value: unknown, pattern: RegExp) => {
    if (typeof value !== "string" || !pattern.test(value))
      say(where, `${JSON.stringify(value)} does not fit ${pattern}`);
  };
  const languageMap = (where: string, value: unknown) => {
    for (const [tag, text] of Object.entries(object(where, value, Object.keys(value ?? {}), []))) {
      matches(`${where} tag`, tag, /^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/);
      if (typeof text !== "string") say(where, "not a text");
    }
  };
  const extensions = (where: string, value: unknown) => {
    if (value === undefined) return;
    for (const key of Object.keys(value ?? {})) matches(`${where} key`, key, IRI);
  };
  const number = (where: string, value: unknown, least = Number.NEGATIVE_INFINITY, most = Number.POSITIVE_INFINITY) => {
    if (value === undefined) return;
    if (typeof value !== "number" || !(value >= least && value <= most)) say(where, `${value} is not in range`);
  };
  const boolean = (where: string, value: unknown) => {
    if (value !== undefined && typeof value !== "boolean") say(where, "not true or false");
  };

  const agent = (where: string, value: unknown) => {
    const { objectType, account } = object(where, value, ["objectType", "account", "name"], ["account"]);
    if (objectType !== undefined && objectType !== "Agent") say(where, "not an agent");
    const { homePage, name } = object(`${where}.account`, account, ["homePage", "name"], ["homePage", "name"]);
    matches(`${where}.account.homePage`, homePage, IRI);
    matches(`${where}.account.name`, name, /./);
  };
  const activity = (where: string, value: unknown) => {
    const found = object(where, value, ["objectType", "id", "definition"], ["id"]);
    if (found.objectType !== undefined && found.objectType !== "Activity") say(where, "not an activity");
    matches(`${where}.id`, found.id, IRI);
    const known = [
      "type",
      "name",
      "description",
      "interactionType",
      "choices",
      "correctResponsesPattern",
      "extensions",
    ];
    const definition = object(`${where}.definition`, found.definition, known, []);
    matches(`${where}.definition.type`, definition.type, IRI);
    languageMap(`${where}.definition.name`, definition.name);
    if (definition.description !== undefined) languageMap(`${where}.definition.description`, definition.description);
    if (definition.interactionType === undefined) return;
    if (definition.interactionType !== "choice") say(where, "of another interaction than ours");
    if (definition.type !== "http://adlnet.gov/expapi/activities/cmi.interaction")
      say(where, "not of the type of interactions");
    const choices = definition.choices as readonly { readonly id: string; readonly description: unknown }[];
    if (new Set(choices.map(({ id }) => id)).size !== choices.length) say(where, "choices of one id");
    for (const choice of choices) {
      object(`${where} choice`, choice, ["id", "description"], ["id"]);
      languageMap(`${where} choice`, choice.description);
    }
    for (const right of definition.correctResponsesPattern as readonly string[]) {
      if (!choices.some(({ id }) => id === right)) say(where, `${right} is no choice`);
    }
  };

  const known = ["id", "actor", "verb", "object", "result", "context", "timestamp", "version"];
  const told = object("statement", statement, known, ["id", "actor", "verb", "object"]);
  matches("id", told.id, UUID);
  agent("actor", told.actor);
  const verb = object("verb", told.verb, ["id", "display"], ["id"]);
  matches("verb.id", verb.id, IRI);
  languageMap("verb.display", verb.display);
  matches("timestamp", told.timestamp, /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d+)?Z$/);
  if ("version" in told && told.version !== "1.0.0") say("version", "whoever sets it has to set 1.0.0");

  const kind = (told.object as { readonly objectType?: unknown } | undefined)?.objectType;
  if (verb.id === "http://adlnet.gov/expapi/verbs/voided" && kind !== "StatementRef")
    say("object", "voids no statement");
  if (kind === "StatementRef") {
    const { id } = object("object", told.object, ["objectType", "id"], ["objectType", "id"]);
    matches("object.id", id, UUID);
  } else activity("object", told.object);

  if (told.result !== undefined) {
    const fields = ["score", "success", "completion", "response", "duration", "extensions"];
    const result = object("result", told.result, fields, []);
    boolean("result.success", result.success);
    boolean("result.completion", result.completion);
    extensions("result.extensions", result.extensions);
    if (result.duration !== undefined) matches("result.duration", result.duration, DURATION);
    if (result.score !== undefined) {
      const { scaled, raw, min, max } = object("score", result.score, ["scaled", "raw", "min", "max"], []);
      number("score.scaled", scaled, -1, 1);
      number("score.min", min);
      number("score.max", max);
      if (Number(min) >= Number(max)) say("score", "min is not below max");
      number("score.raw", raw, Number(min), Number(max));
    }
  }
  if (told.context !== undefined) {
    const fields = ["registration", "platform", "language", "contextActivities", "extensions"];
    const context = object("context", told.context, fields, []);
    if (kind === "StatementRef" && "platform" in context)
      say("context.platform", "only where the object is an activity");
    matches("context.registration", context.registration, UUID);
    matches("context.language", context.language, /^[a-z]{2,3}$/);
    const around = ["parent", "grouping", "category", "other"];
    for (const [as, activities] of Object.entries(object("contextActivities", context.contextActivities, around, []))) {
      for (const one of activities as readonly unknown[]) activity(`contextActivities.${as}`, one);
    }
  }
  return problems;
}

/** Standard form, variant 2 (2.4.1). */
const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;
/** With its scheme (2.2.s4.b1.b8), and no signs that an IRI may not have. */
const IRI = /^[a-z][a-z0-9+.-]*:\/\/[^\s<>"{}|\\^`]+$/;
/** ISO 8601 with whole seconds or hundredths (4.6). */
const DURATION = /^P(?!$)(\d+D)?(T(?=\d)(\d+H)?(\d+M)?(\d+(\.\d{1,2})?S)?)?$/;
