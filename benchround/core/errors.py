"""The errors a grower can meet, each saying what happened, to which thing, and what to do."""


class BenchroundError(Exception):
    """Any failure the program can explain; the message is shown to the grower as it stands."""


class OutOfRangeError(BenchroundError):
    """A figure lies outside the range a formula or a field is valid for."""


class IllegalRecordError(BenchroundError):
    """A record does not fit the stage the batch is in; nothing was changed."""


class UnknownNameError(BenchroundError):
    """A crop, batch, place, packet or record was named that does not exist."""


class CropFileError(BenchroundError):
    """One or more faults in crop tables; the message lists them all."""


class InputError(BenchroundError):
    """Something typed or read cannot be understood; nothing was taken from it."""


class SeasonError(BenchroundError):
    """The season folder cannot be read or written as asked."""


class SeasonBusyError(SeasonError):
    """Another running program holds the season folder."""


class StoppedError(BenchroundError):
    """The grower stopped long work; the message says what was and what was not done."""
