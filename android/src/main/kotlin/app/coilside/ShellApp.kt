package app.coilside

import android.app.Application
import android.content.Context
import app.coilside.effects.Alarms
import app.coilside.effects.Camera
import app.coilside.effects.CodeReader
import app.coilside.effects.Locator
import app.coilside.frame.Scrolled
import app.coilside.blocks.Previews
import app.coilside.send.Plan
import app.coilside.send.Sender
import app.coilside.session.Session
import java.io.File

/** The process: it holds what activity, job and receivers share. */
class ShellApp : Application() {
    private var held: Parts? = null

    /** What belongs to one session. */
    class Parts(app: Context, ground: Ground) {
        val alarms = Alarms(app, ground)
        val session = Session(app, ground, alarms)
        val locator = Locator(app, session)
        val camera = Camera(app, session, locator)
        val codes = CodeReader(app, session)
        val sender = Sender(app, session)
        val previews = Previews(session, File(ground.folder(app), ORIGINALS))
        val scrolled = Scrolled()

        init {
            val plan = Plan(app, sender)
            session.afterTurn = {
                sender.hurry()
                session.screen?.let { plan.follow(it.outbox) }
                camera.adopt()
            }
        }

        fun close() {
            camera.close()
            codes.close()
            locator.close()
            sender.close()
            previews.close()
            session.close()
            alarms.close()
        }

        private companion object {
            /** The core's shelf for photographs, in its folder. */
            const val ORIGINALS = "originals"
        }
    }

    @Synchronized
    private fun parts(): Parts = held ?: Parts(this, ground(this)).also {
        held = it
        it.session.open()
    }

    @Synchronized
    private fun forget() {
        held?.close()
        held = null
    }

    companion object {
        /** Where time, randomness, keys and folder come from. Set before the application begins; none: the device's own. */
        @JvmStatic
        var ground: Ground? = null

        /** The ground in use. */
        fun ground(context: Context): Ground = ground ?: DeviceGround(context.applicationContext).also { ground = it }

        /** What this process holds; the core is opened where it was not. */
        fun parts(context: Context): Parts = (context.applicationContext as ShellApp).parts()

        fun session(context: Context): Session = parts(context).session

        fun alarms(context: Context): Alarms = parts(context).alarms

        fun sender(context: Context): Sender = parts(context).sender

        /** Lets go of everything, as when the system ends the process; the next call begins anew from the disk. */
        fun close(context: Context) = (context.applicationContext as ShellApp).forget()
    }
}
