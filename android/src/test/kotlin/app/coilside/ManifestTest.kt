package app.coilside

import android.content.pm.ApplicationInfo
import android.content.pm.PackageManager
import android.view.WindowManager
import app.coilside.support.Scene
import app.coilside.support.root
import java.io.File
import javax.xml.parsers.DocumentBuilderFactory
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TemporaryFolder
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode
import org.w3c.dom.Element

/** What the app tells the system about itself: nothing is copied elsewhere, nothing goes in the clear, nobody else gets in. */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 34], application = ShellApp::class, qualifiers = "en-w390dp-h844dp-port-mdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class ManifestTest {
    @get:Rule
    val folder = TemporaryFolder()
    private val app get() = RuntimeEnvironment.getApplication()
    private val scene: Scene by lazy { Scene(folder.newFolder("store")) }

    @After
    fun close() = scene.phone.close()

    private fun resource(path: String): Element =
        DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(File(root, "android/src/$path")).documentElement

    private fun Element.all(name: String): List<Element> = getElementsByTagName(name).let { found -> (0 until found.length).map { found.item(it) as Element } }

    @Test
    fun `nothing of the store is backed up or moved to another phone`() {
        assertEquals(0, app.applicationInfo.flags and ApplicationInfo.FLAG_ALLOW_BACKUP)
        val application = resource("main/AndroidManifest.xml").all("application").single()
        assertEquals("@xml/nothing_transferred", application.getAttribute("android:dataExtractionRules"))
        val rules = resource("main/res/xml/nothing_transferred.xml")
        for (way in listOf("cloud-backup", "device-transfer")) {
            val left = rules.all(way).single().all("exclude").filter { it.getAttribute("path") == "." }.map { it.getAttribute("domain") }
            assertEquals(way, setOf("root", "file", "database", "sharedpref", "external"), left.toSet())
        }
        assertTrue(DeviceGround(app).folder(app).path.startsWith(app.noBackupFilesDir.path))
    }

    @Test
    fun `nothing goes in the clear, but for an office on this very machine in a build for trying out`() {
        val application = resource("main/AndroidManifest.xml").all("application").single()
        assertEquals("@xml/network", application.getAttribute("android:networkSecurityConfig"))
        for (build in listOf("main", "debug")) {
            val rules = resource("$build/res/xml/network.xml")
            val inTheClear = (listOf(rules) + rules.all("base-config") + rules.all("domain-config")).filter { it.getAttribute("cleartextTrafficPermitted") == "true" }
            val where = inTheClear.flatMap { it.all("domain") }.map { it.textContent.trim() to it.getAttribute("includeSubdomains") }
            assertEquals("false", rules.all("base-config").single().getAttribute("cleartextTrafficPermitted"))
            assertEquals(build, if (build == "debug") listOf("127.0.0.1" to "false") else emptyList<Any>(), where)
            assertEquals(build, where.size, inTheClear.size)
        }
    }

    @Test
    fun `other apps reach the screen that is opened and what the system itself calls, and nothing else`() {
        val asked = PackageManager.GET_ACTIVITIES or PackageManager.GET_PROVIDERS or PackageManager.GET_RECEIVERS or PackageManager.GET_SERVICES
        val info = app.packageManager.getPackageInfo(app.packageName, asked)
        val all = listOf(info.activities, info.providers, info.receivers, info.services).flatMap { it.orEmpty().toList() }
        val open = all.filter { it.exported }.map { it.name.substringAfterLast('.') }
        assertEquals(setOf("MainActivity", "BootReceiver"), open.toSet())
        assertEquals("android.permission.BIND_JOB_SERVICE", info.services!!.single().permission)
        assertTrue("only ${all.size} parts were found", all.size >= 5)
    }

    @Test
    fun `a screen can be shared, for technicians help each other by it`() {
        scene.due()
        assertEquals(0, scene.phone.activity.window.attributes.flags and WindowManager.LayoutParams.FLAG_SECURE)
    }
}
