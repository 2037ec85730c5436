package app.coilside.support

import android.os.Looper
import coilside.Action
import java.io.File
import org.json.JSONObject
import org.robolectric.Shadows.shadowOf
import org.robolectric.shadows.ShadowAlarmManager

/** Ways to a state of the visit, for tests that begin there. */
class Scene(private val folder: File, val ground: TestGround = TestGround(folder)) {
    val phone = Phone(ground)
    val technician = Technician(phone, photographs())
    val hand get() = technician.hand

    /** The app is open, the visit is due. */
    fun due(): Scene {
        phone.open()
        phone.assigned(Village.assignments())
        return this
    }

    /** The visit has begun; nobody was asked for the place yet. */
    fun begun(): Scene {
        due()
        hand.tap(technician.find(Action.StartVisit(Village.ASSIGNMENT)))
        return this
    }

    /** The visit has begun, and the place is known. */
    fun placed(): Scene {
        Sky.on()
        Sky.allow()
        begun()
        Sky.fix()
        phone.settle()
        return this
    }

    /** Goes on until a photograph is the next thing to take, and the camera app is open for it. */
    fun atCamera(): Scene {
        placed()
        technician.playUntil(before = { OtherApp.openedBy(phone.activity)?.let { camera = it } }) { camera != null }
        return this
    }

    /** The camera app that [atCamera] came to. */
    var camera: OtherApp? = null
        private set

    /** A waiting time runs. */
    fun waiting(): Scene = kept("waiting") { technician.playUntil { Bell.inMs() != null } }

    /** All the work is done, the visit is not sealed. */
    fun leaving(): Scene = kept("leaving") { technician.playUntil { phone.session.screen?.place == "leaving" } }

    /** The visit was broken off and sealed. */
    fun sealed(): Scene = kept("sealed", ::brokenOff)

    /** The way there is long: it is gone once, and the others begin with what lay on the disk then. */
    private fun kept(name: String, go: () -> Unit): Scene {
        Sky.on()
        Sky.allow()
        val kept = File(out, "scenes/$name-${ProcessHandle.current().pid()}")
        val clocks = File("${kept.path}.clocks")
        if (!clocks.exists()) {
            placed()
            go()
            phone.end()
            ShadowAlarmManager.reset()
            folder.copyRecursively(kept)
            clocks.writeText("${ground.utcMs} ${ground.monoMs}")
        } else {
            kept.copyRecursively(folder, overwrite = true)
            val (utcMs, monoMs) = clocks.readText().split(' ').map(String::toLong)
            ground.utcMs = utcMs
            ground.monoMs = monoMs
        }
        phone.open()
        return this
    }

    /** Breaks the visit off for a reason, and seals it. */
    fun brokenOff() {
        technician.goTo("break-off")
        val reason = checkNotNull(phone.window.input("break-off"))
        hand.type(reason, "Called away")
        hand.enter(reason)
        technician.playUntil { phone.session.screen?.title == English["sealed-title"] }
    }

    fun words(): String = phone.window.words()

    fun record(): Record {
        val visit = phone.core { it.currentVisit() ?: "" }
        return Record(phone.core { it.events(visit) })
    }

    /** The last event of a kind. */
    fun last(kind: String): JSONObject? = record().of(kind).lastOrNull()

    /** Time goes by in front of the phone, and whatever waits for it runs. */
    fun pass(ms: Long) {
        ground.pass(ms)
        shadowOf(Looper.getMainLooper()).idle()
        phone.settle()
    }

    companion object {
        fun photographs(): List<Photo> = (1..24).map { number ->
            val exif = Exif("2026:05:04 09:%02d:00".format(number), "+01:00", listOf(1, 6, 3, 8)[number % 4], Village.LATITUDE_DEG, Village.LONGITUDE_DEG)
            Photos.draw(number, exif)
        }
    }
}
