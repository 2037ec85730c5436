package app.coilside

import android.graphics.Bitmap
import android.graphics.Rect
import app.coilside.blocks.InkPad
import app.coilside.checks.Fault
import app.coilside.checks.faults
import app.coilside.checks.picture
import app.coilside.support.ContactSheet
import app.coilside.support.English
import app.coilside.support.Scene
import app.coilside.support.Sky
import app.coilside.support.Spanish
import app.coilside.support.all
import app.coilside.support.block
import app.coilside.support.out
import app.coilside.support.press
import app.coilside.support.root
import app.coilside.support.said
import app.coilside.support.withPress
import app.coilside.support.withRole
import coilside.Action
import coilside.Block
import coilside.Tone
import java.io.File
import javax.imageio.ImageIO
import kotlin.reflect.KClass
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.rules.TemporaryFolder
import org.robolectric.RuntimeEnvironment

/** Every screen of a visit: can it be read, found and touched? Each language is a class of its own, so that they run beside each other. */
abstract class EveryScreen {
    @get:Rule
    val folder = TemporaryFolder()
    private val scene: Scene by lazy { Scene(folder.newFolder("store")) }
    private val found = ArrayList<Pair<String, Fault>>()
    private val kinds = HashSet<KClass<out Block>>()
    private val shown = LinkedHashMap<String, Bitmap>()
    private val seen = HashSet<String>()
    private var ways = emptyList<Way>()

    /** A way in which the phone may be set. */
    protected class Way(val name: String, val qualifiers: String, val scale: Float)

    @After
    fun close() = scene.phone.close()

    protected fun everyScreen(among: List<Way>) {
        ways = among
        Sky.on()
        scene.due()
        look("round")
        scene.technician.goTo("settings")
        look("settings")
        scene.technician.goTo("round")
        if (scene.phone.window.withPress(Action.Go("load")) != null) {
            scene.technician.goTo("load")
            look("load")
            scene.technician.goTo("round")
        }
        scene.hand.tap(scene.technician.find(Action.StartVisit(app.coilside.support.Village.ASSIGNMENT)))
        look("place")
        scene.technician.playUntil(before = ::lookAround) { scene.phone.session.screen?.place == "leaving" }
        leave()
        assertEquals("kinds of blocks that were never seen", emptySet<String?>(), Block::class.sealedNames() - kinds.mapNotNull { it.simpleName }.toSet())
        println("screens: ${seen.size} in ${ways.size} ways of ${kinds.size} kinds of blocks, ${found.size} faults")
        assertEquals(found.distinct().joinToString("\n") { (screen, fault) -> "$screen: ${fault.where} ${fault.what}" }, 0, found.size)
    }

    /** What is new since the last move. */
    private fun lookAround() {
        val screen = scene.phone.session.screen ?: return
        val dangers = screen.notices.any { it.tone != Tone.PLAIN }
        if (scene.phone.window.withRole("alarm-stop") != null) once("alarm")
        if (dangers) once("notice")
        for (block in screen.blocks.flatMap { if (it is Block.Step) it.blocks else listOf(it) }) {
            val name = if (block is Block.Dwell) "dwell ${block.state}" else "block ${block::class.simpleName}"
            if (isCovered()) continue
            once(name) { bring(block) }
            if (block is Block.Number && block.question != null) once("question")
        }
        if (screen.strip.size >= STRIP_FULL && once("menu") { tapMenu() }) visitEveryPlace()
    }

    /** Whether an alarm, a sheet or the menu lies above the screen. */
    private fun isCovered() = listOf("alarm-stop", "photo-take", "place-allow").any { scene.phone.window.withRole(it) != null }

    private fun bring(block: Block) {
        val view = scene.phone.window.all().firstOrNull { it.block == block } ?: return
        view.requestRectangleOnScreen(Rect(0, 0, view.width, view.height), true)
        scene.phone.settle()
    }

    private fun visitEveryPlace() {
        for (place in listOf("phases", "photographs", "readings", "findings", "emergency", "break-off", "outbox", "procedures", "settings", "history", "used")) {
            if (!canGo(place)) continue
            scene.technician.goTo(place)
            look(place)
            if (place == "outbox") {
                val join = Action.Go("join")
                if (scene.phone.window.withPress(join) != null) {
                    scene.hand.tap(scene.technician.find(join))
                    look("join")
                }
            }
        }
        scene.technician.goTo("now")
    }

    private fun canGo(place: String) = scene.phone.session.screen?.menu?.any { it.press == Action.Go(place) } == true

    private fun tapMenu() = scene.hand.tap(checkNotNull(scene.phone.window.withRole("menu-key")) { scene.words() })

    private fun leave() {
        look("leaving")
        for (place in listOf("readings", "photographs", "history", "used")) {
            if (!canGo(place)) continue
            scene.technician.goTo(place)
            look("$place at the end")
        }
        scene.technician.goTo("leaving")
        val present = scene.phone.window.all().firstOrNull { it.press != null && it.said() in listOf(English, Spanish).map { words -> words["customer-present"] } }
        scene.hand.tap(checkNotNull(present) { "nobody can say that the customer is there: ${scene.words()}" })
        look("customer")
        val pad = scene.phone.window.all().filterIsInstance<InkPad>().single()
        for (stroke in SIGNATURE) scene.hand.stroke(pad, stroke)
        look("drawing")
        scene.hand.tap(scene.technician.find(Action.Sign(drawn = true)))
        scene.technician.playUntil { scene.phone.session.screen?.foot.orEmpty().none { it.press == Action.Seal } }
        look("sealed")
    }

    /** Looks once at what has a name; [first] brings it before the eyes. Returns whether it was the first time. */
    private fun once(name: String, first: () -> Unit = {}): Boolean {
        if (!seen.add(name)) return false
        first()
        look(name)
        return true
    }

    /** All checks in each of the ways in which the phone may be set. */
    private fun look(name: String) {
        seen += name
        keep(name)
        for (way in ways) {
            set(way)
            scene.phone.window.all().mapNotNull { it.block }.forEach { kinds += it::class }
            val here = faults(scene.phone.window)
            found += here.map { "$name ${way.name}" to it }
            for (fault in here) System.err.println("fault: $name ${way.name}: ${fault.where} ${fault.what}")
            if (here.isNotEmpty()) write("$name-${way.name}")
            keep("$name ${way.name}")
        }
        set(DAY)
    }

    /** A picture for the sheet. */
    private fun keep(name: String) {
        if (name in SHEET && name !in shown) shown[name] = picture(scene.phone.window)
    }

    private fun set(way: Way) = scene.phone.qualifiers(way.qualifiers, way.scale)

    private fun write(name: String) {
        val file = File(out, "faulty/${RuntimeEnvironment.getQualifiers().substring(0, 2)}-${name.replace(' ', '-')}.png")
        file.parentFile.mkdirs()
        file.outputStream().use { picture(scene.phone.window).compress(Bitmap.CompressFormat.PNG, 100, it) }
    }

    protected fun sheet() {
        val sheet = ContactSheet(COLUMNS)
        for (name in SHEET) sheet.add(checkNotNull(shown[name]) { "'$name' was never seen, but ${seen.sorted()}" })
        val drawn = sheet.whole()
        ContactSheet.write(drawn, File(out, "screens.png"))
        val kept = File(root, "android/screens.png")
        if (System.getenv("UPDATE_SCREENS") == "1") ContactSheet.write(drawn, kept)
        assertTrue("${kept.length()} bytes", kept.length() in 1..SHEET_BYTES_MAX)
        val difference = ContactSheet.difference(ImageIO.read(kept), drawn)
        assertTrue("the screens differ from android/screens.png by $difference: look at target/android/screens.png, then run again with UPDATE_SCREENS=1", difference < DIFFERENCE_MAX)
    }

    private fun KClass<Block>.sealedNames(): Set<String?> = java.declaredClasses.filter { Block::class.java.isAssignableFrom(it) }.map { it.simpleName }.toSet()

    protected companion object {
        val DAY = Way("by day", "+w390dp-h844dp-port-notnight", 1f)
        val NIGHT = Way("at night", "+w390dp-h844dp-port-night", 1f)
        val LARGE = Way("in large letters", "+w320dp-h568dp-port-notnight", 2f)
        val HALF = Way("in half a window", "+w360dp-h320dp-land-notnight", 1f)

        /** How many live statements make a full strip. */
        const val STRIP_FULL = 3
        const val SHEET_BYTES_MAX = 600_000L
        const val DIFFERENCE_MAX = 0.02
        const val COLUMNS = 8

        /** What tells most of the shell, in the order of a visit. */
        val SHEET = listOf(
            "round", "round at night", "load", "place", "block Caution", "block Shot", "block Choice", "block Number",
            "block Number at night", "block Mix", "question", "dwell WAITING", "dwell RUNNING", "dwell RUNNING at night", "dwell RUNNING in large letters", "alarm",
            "dwell READY", "place in large letters", "menu", "phases", "photographs", "readings", "findings", "emergency",
            "emergency at night", "break-off", "outbox", "join", "procedures", "settings", "question at night", "leaving",
            "readings at the end", "history at the end", "used at the end", "menu in large letters", "customer", "drawing", "sealed", "sealed at night",
        )

        /** Strokes by shares of the box. */
        val SIGNATURE = listOf(
            listOf(0.16f to 0.72f, 0.22f to 0.2f, 0.27f to 0.24f, 0.2f to 0.5f, 0.3f to 0.55f, 0.24f to 0.75f),
            listOf(0.36f to 0.7f, 0.42f to 0.45f, 0.46f to 0.72f, 0.52f to 0.44f, 0.56f to 0.7f, 0.64f to 0.5f, 0.7f to 0.7f, 0.84f to 0.6f),
        )
    }
}
