package app.coilside

import android.content.Intent
import android.content.pm.PackageManager
import android.net.Uri
import android.webkit.WebView
import app.coilside.support.Paper
import app.coilside.support.Printer
import app.coilside.support.Scene
import app.coilside.support.all
import app.coilside.support.block
import app.coilside.support.withRole
import coilside.Block
import org.junit.After
import org.junit.Assert.assertArrayEquals
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNull
import org.junit.Assert.assertSame
import org.junit.Assert.assertTrue
import org.junit.Before
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TemporaryFolder
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** The owner's summary is shown, handed to another app and printed: the page that the core made, and nothing beside it. */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 34], application = ShellApp::class, qualifiers = "en-w390dp-h844dp-port-mdpi", shadows = [Paper::class, Printer::class])
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class SummaryTest {
    @get:Rule
    val folder = TemporaryFolder()
    private val app get() = RuntimeEnvironment.getApplication()
    private val scene: Scene by lazy { Scene(folder.newFolder("store")) }

    @Before
    fun seal() {
        Printer.jobs.clear()
        scene.sealed()
    }

    @After
    fun close() = scene.phone.close()

    private fun page() = scene.phone.core { it.summaryPage(null) }

    private fun follow(to: String) =
        scene.hand.tap(scene.phone.window.all().first { it.role() == "link" && (it.parent as android.view.View).block.let { block -> (block as Block.Link).to == to } })

    private fun android.view.View.role() = getTag(R.id.role)

    private fun web(): WebView? = scene.phone.window.all().filterIsInstance<WebView>().firstOrNull()

    private fun tap(role: String) = scene.hand.tap(checkNotNull(scene.phone.window.withRole(role)) { "no $role: ${scene.words()}" })

    @Test
    fun `it is shared as one file of the provider, which the chosen app may read and not write, to the byte`() {
        follow("summary.html")
        tap("share")
        val chooser = checkNotNull(shadowOf(scene.phone.activity).nextStartedActivity) { "nothing is shared" }
        assertEquals(Intent.ACTION_CHOOSER, chooser.action)
        @Suppress("DEPRECATION")
        val send = checkNotNull(chooser.getParcelableExtra<Intent>(Intent.EXTRA_INTENT))
        assertEquals(Intent.ACTION_SEND, send.action)
        assertEquals("text/html", send.type)
        assertTrue(send.getStringExtra(Intent.EXTRA_SUBJECT).orEmpty().isNotBlank())
        @Suppress("DEPRECATION")
        val address = checkNotNull(send.getParcelableExtra<Uri>(Intent.EXTRA_STREAM))
        // The chooser hands the grant on only where it has it itself.
        for (intent in listOf(send, chooser)) {
            assertEquals(address, intent.clipData?.getItemAt(0)?.uri)
            assertEquals(1, intent.clipData?.itemCount)
            assertEquals(Intent.FLAG_GRANT_READ_URI_PERMISSION, intent.flags and GRANTS)
        }
        val provider = checkNotNull(app.packageManager.resolveContentProvider(checkNotNull(address.authority), PackageManager.MATCH_ALL))
        assertEquals(false, provider.exported)
        assertTrue(provider.grantUriPermissions)
        assertEquals(send.type, app.contentResolver.getType(address))
        val read = checkNotNull(app.contentResolver.openInputStream(address)).use { it.readBytes() }
        assertArrayEquals(page().toByteArray(), read)
    }

    @Test
    fun `it is printed as one document under its name, once the page is laid out`() {
        follow("summary.pdf")
        val web = checkNotNull(web()) { "no page is shown" }
        assertEquals(page(), shadowOf(web).lastLoadDataWithBaseURL.data)
        assertEquals("a page that is not laid out is printed", 0, Printer.jobs.size)
        shadowOf(web).webViewClient.onPageFinished(web, "about:blank")
        val job = Printer.jobs.single()
        val name = scene.phone.session.screen!!.blocks.filterIsInstance<Block.Link>().first { it.to == "summary.pdf" }.label
        assertEquals(name, job.name)
        assertSame("another page is printed", web, job.document.of)
        tap("print")
        assertEquals("print again", 2, Printer.jobs.size)
    }

    @Test
    fun `its page runs nothing and loads nothing, and closed it is gone`() {
        follow("summary.html")
        val web = checkNotNull(web())
        assertEquals(listOf(false, false, false, true), with(web.settings) { listOf(javaScriptEnabled, allowFileAccess, allowContentAccess, blockNetworkLoads) })
        tap("summary-close")
        assertNull(web())
        assertEquals(0, Printer.jobs.size)
    }

    private companion object {
        const val GRANTS = Intent.FLAG_GRANT_READ_URI_PERMISSION or Intent.FLAG_GRANT_WRITE_URI_PERMISSION or
            Intent.FLAG_GRANT_PERSISTABLE_URI_PERMISSION or Intent.FLAG_GRANT_PREFIX_URI_PERMISSION
    }
}
