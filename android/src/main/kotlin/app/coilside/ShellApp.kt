package app.coilside

import android.app.Application
import android.content.Context
import app.coilside.effects.Alarms
import app.coilside.send.Sender
import app.coilside.session.Session

/** The process: it holds the one session, the alarms and the sender that activity, job and receivers share. */
class ShellApp : Application() {
    private var held: Parts? = null

    /** What belongs together; a new session comes with new ones. */
    private class Parts(app: ShellApp, ground: Ground) {
        val alarms = Alarms(app, ground)
        val session = Session(app, ground, alarms)
        val sender = Sender(app, session)
    }

    @Synchronized
    private fun parts(): Parts = held ?: Parts(this, groundOf(this)).also {
        held = it
        it.session.open()
    }

    /** Lets go of everything, as when the system ends the process; the next call begins anew from the disk. */
    @Synchronized
    fun close() {
        val parts = held ?: return
        held = null
        parts.sender.close()
        parts.session.close()
        parts.alarms.close()
    }

    companion object {
        /** Where time, randomness, keys and folder come from. Set before the application begins; none: the device's own. */
        @JvmStatic
        var ground: Ground? = null

        private fun groundOf(app: Context): Ground = ground ?: DeviceGround(app).also { ground = it }

        private fun of(context: Context): ShellApp = context.applicationContext as ShellApp

        /** The time of the ground in use. */
        fun ground(context: Context): Ground = groundOf(context.applicationContext)

        /** The session of this process, opened where it was not. */
        fun session(context: Context): Session = of(context).parts().session

        /** The alarms of this process. */
        fun alarms(context: Context): Alarms = of(context).parts().alarms

        /** The sender of this process. */
        fun sender(context: Context): Sender = of(context).parts().sender

        /** Ends the session of this process, see [ShellApp.close]. */
        fun close(context: Context) = of(context).close()
    }
}
