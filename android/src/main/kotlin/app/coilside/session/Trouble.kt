package app.coilside.session

import coilside.DoorFault

/** What went wrong with one call. [again] repeats it; none where nothing would be repeated. */
class Trouble(val isFull: Boolean, val detail: String, val again: (() -> Unit)?)

/** What a failed call is to a person. */
fun troubleOf(fault: Throwable, again: (() -> Unit)?): Trouble {
    val detail = when (fault) {
        is DoorFault.Full -> fault.detail
        is DoorFault.InUse -> fault.detail
        is DoorFault.NoSuch -> fault.detail
        is DoorFault.Failed -> fault.detail
        else -> fault.toString()
    }
    return Trouble(fault is DoorFault.Full, detail, again)
}
