/** Thousandths of a mark as they are shown in an account: "12.35". */
export const marksInHundredths = (thousandths: number): string => (thousandths / 1000).toFixed(2);

/** A length, an angle or what it is off by, as it is shown: one decimal. */
export const inTenths = (value: number): string => value.toFixed(1);
