export {
  byName,
  type NewPassword,
  type NewPerson,
  newPasswordSchema,
  newPersonSchema,
  PASSWORD_MIN_LENGTH,
  type Person,
  personNameSchema,
  ROLES,
  type Role,
  SIGN_IN_NAME_RULE,
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
export {
  isOnlyThisComputer,
  readAddress,
  readSlipFragment,
  type SignInSlip,
  type SlipAccess,
  slipLink,
} from "./slip-link";
export { ERASED_NAME, withoutNames } from "./without-names";
