export {
  type NewPassword,
  type NewPerson,
  newPasswordSchema,
  newPersonSchema,
  PASSWORD_MIN_LENGTH,
  type Person,
  personNameSchema,
  ROLES,
  type Role,
  signInNameSchema,
} from "./person";
export {
  DEFAULT_PASS_MARKS,
  type PassMarks,
  passMarksSchema,
  type WorkshopSettings,
  workshopNameSchema,
  workshopSettingsSchema,
} from "./settings";
