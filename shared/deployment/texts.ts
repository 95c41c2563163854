/** The attribute of a text message by which a subscription of the topic takes only what is for its own number. */
export const recipientAttribute = 'recipient';
